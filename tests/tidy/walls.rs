//! The window's walls, as its configuration declares them; and the packaged programs have nothing of
//! the bridge that serves browser tests.

use std::path::Path;

use serde_json::{Value, json};

use crate::{files_below, read};

fn read_json(path: &str) -> Value {
    serde_json::from_str(&read(path)).unwrap()
}

#[test]
fn the_page_may_run_the_one_command_and_nothing_else() {
    let files = files_below("src-tauri/capabilities");
    assert_eq!(files, ["src-tauri/capabilities/main.json"], "one capability");
    let capability = read_json(&files[0]);
    assert_eq!(capability["permissions"], json!(["allow-call"]));
    assert_eq!(capability["windows"], json!(["main"]));
    assert!(capability.get("remote").is_none(), "no page from elsewhere has a permission");
    let build = read("src-tauri/build.rs");
    assert!(
        build.contains(".commands(&[\"call\"])"),
        "undeclared, every command would be open to the page"
    );
}

#[test]
fn the_content_policy_is_strict() {
    let app = &read_json("src-tauri/tauri.conf.json")["app"];
    assert_eq!(app["withGlobalTauri"], json!(false));
    assert_eq!(app["security"]["capabilities"], json!(["main"]));
    let policy = app["security"]["csp"].as_str().unwrap();
    assert!(policy.starts_with("default-src 'self';"), "{policy}");
    for never in ["unsafe", "*", "https:", "blob:", "asset:"] {
        assert!(!policy.contains(never), "the policy has {never}: {policy}");
    }
    let weakened = &app["security"]["dangerousDisableAssetCspModification"];
    assert!(
        weakened.is_null(),
        "the shell adds the hashes of its own scripts, instead of a hole for all"
    );
}

/// What only the bridge says.
const BRIDGE_SAYS: &str = "only GET and POST /call";

fn says(program: &Path) -> bool {
    let bytes = std::fs::read(program).unwrap_or_else(|e| {
        panic!("{}: {e}; build the programs first: cargo build --workspace", program.display())
    });
    bytes.windows(BRIDGE_SAYS.len()).any(|window| window == BRIDGE_SAYS.as_bytes())
}

#[test]
fn the_packaged_programs_have_no_bridge() {
    let bridge = Path::new(env!("CARGO_BIN_EXE_carryover-bridge"));
    assert!(says(bridge), "the bridge itself is known by what it says");
    for program in ["carryover", "carryover-cli"] {
        let program = bridge.with_file_name(format!("{program}{}", std::env::consts::EXE_SUFFIX));
        assert!(!says(&program), "{} holds the bridge", program.display());
    }
}
