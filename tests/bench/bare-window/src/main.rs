//! A window that shows one heading and does nothing else.

fn main() {
    let window = tauri::Builder::default().run(tauri::generate_context!());
    if let Err(error) = window {
        eprintln!("The bare window did not open: {error}");
        std::process::exit(70);
    }
}
