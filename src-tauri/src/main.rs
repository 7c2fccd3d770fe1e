//! The window: starts, keeps its walls, owns the dialogs, and passes calls on to the core.
//!
//! `carryover [--file PATH | --sample]`. Without either, the file that was open last opens again.
#![cfg_attr(not(debug_assertions), windows_subsystem = "windows")]

mod calls;
mod faults;
mod host;
mod start;
mod window;

use std::process::ExitCode;

use tauri::RunEvent;

fn main() -> ExitCode {
    let started = tauri::Builder::default()
        .plugin(tauri_plugin_dialog::init())
        .invoke_handler(tauri::generate_handler![calls::call])
        .setup(|app| start::set_up(app.handle()))
        .build(tauri::generate_context!());
    match started {
        Ok(app) => {
            app.run(|app, event| {
                if let RunEvent::Exit = event {
                    calls::put_away(app);
                }
            });
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("Carryover could not open its window: {error}");
            ExitCode::from(70)
        }
    }
}
