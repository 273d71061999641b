//! `schema`: the JSON schema of an answer.

/// The answers for programs, each with its schema.
pub(crate) const SCHEMAS: [(&str, &str); 20] = [
    ("backup", include_str!("../../../docs/schema/backup.json")),
    ("begin", include_str!("../../../docs/schema/begin.json")),
    ("calc", include_str!("../../../docs/schema/calc.json")),
    ("check", include_str!("../../../docs/schema/check.json")),
    ("error", include_str!("../../../docs/schema/error.json")),
    ("export", include_str!("../../../docs/schema/export.json")),
    ("import", include_str!("../../../docs/schema/import.json")),
    ("kinds", include_str!("../../../docs/schema/kinds.json")),
    ("paths", include_str!("../../../docs/schema/paths.json")),
    ("log", include_str!("../../../docs/schema/log.json")),
    ("match", include_str!("../../../docs/schema/match.json")),
    ("ready", include_str!("../../../docs/schema/ready.json")),
    ("rescue", include_str!("../../../docs/schema/rescue.json")),
    ("sample", include_str!("../../../docs/schema/sample.json")),
    ("since", include_str!("../../../docs/schema/since.json")),
    ("species", include_str!("../../../docs/schema/species.json")),
    ("undo", include_str!("../../../docs/schema/undo.json")),
    ("walk", include_str!("../../../docs/schema/walk.json")),
    ("why", include_str!("../../../docs/schema/why.json")),
    ("write", include_str!("../../../docs/schema/write.json")),
];

/// The names of the answers.
pub(crate) fn answers() -> [&'static str; SCHEMAS.len()] {
    SCHEMAS.map(|(name, _)| name)
}

/// The schema of an answer.
pub(crate) fn schema_of(answer: &str) -> Option<&'static str> {
    SCHEMAS.iter().find(|(name, _)| *name == answer).map(|(_, schema)| *schema)
}
