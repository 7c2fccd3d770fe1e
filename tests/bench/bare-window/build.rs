//! Prepares what the shell's macro reads.

fn main() {
    tauri_build::build();
}
