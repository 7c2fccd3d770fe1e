//! Writes the JSON Schema of a sport pack to `packs/pack.schema.json`.

fn main() -> std::io::Result<()> {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/packs/pack.schema.json");
    std::fs::write(file, carryover_core::sports::pack::schema())
}
