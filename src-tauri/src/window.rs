//! The window and its walls: it shows the program's own page, never leaves it, opens no other
//! window, takes no dropped file, and has no developer tools once released.

use std::path::Path;

use tauri::webview::NewWindowResponse;
use tauri::{AppHandle, Manager, Url, WebviewUrl, WebviewWindowBuilder};
use tauri_plugin_window_state::StateFlags;

/// The name of the only window, as its capability has it.
pub const LABEL: &str = "main";

/// Opens the window. What the page remembers, and the window's size, are kept under `folder`.
pub fn open(app: &AppHandle, folder: &Path) -> tauri::Result<()> {
    let remembered = tauri_plugin_window_state::Builder::new()
        .with_state_flags(StateFlags::SIZE | StateFlags::POSITION | StateFlags::MAXIMIZED)
        .with_filename(folder.join("window.json").to_string_lossy())
        .build();
    app.plugin(remembered)?;
    WebviewWindowBuilder::new(app, LABEL, WebviewUrl::App("index.html".into()))
        .title("Carryover")
        .inner_size(1200.0, 820.0)
        .min_inner_size(600.0, 480.0)
        .data_directory(folder.join("page"))
        .on_navigation(is_our_page)
        .on_new_window(|_, _| NewWindowResponse::Deny)
        .disable_drag_drop_handler()
        .devtools(cfg!(debug_assertions))
        .build()?;
    Ok(())
}

/// Brings the window to the front.
pub fn raise(app: &AppHandle) {
    if let Some(window) = app.get_webview_window(LABEL) {
        let _ = window.unminimize();
        let _ = window.set_focus();
    }
}

/// Whether an address is the program's own page: `tauri://localhost`, which Windows spells
/// `http://tauri.localhost`.
fn is_our_page(to: &Url) -> bool {
    let (scheme, host) =
        if cfg!(windows) { ("http", "tauri.localhost") } else { ("tauri", "localhost") };
    to.scheme() == scheme && to.host_str() == Some(host) && to.port().is_none()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    #[cfg(not(windows))]
    fn the_window_stays_on_its_page() {
        let may = |to: &str| is_our_page(&to.parse().unwrap());
        assert!(may("tauri://localhost/"));
        assert!(may("tauri://localhost/index.html#/people"));
        for elsewhere in [
            "https://example.org/",
            "http://localhost/",
            "tauri://elsewhere/",
            "tauri://localhost:81/",
            "file:///etc/hostname",
            "about:blank",
            "data:text/html,x",
            "javascript:alert(1)",
        ] {
            assert!(!may(elsewhere), "{elsewhere} is not our page");
        }
    }
}
