//! Declares a group of kinds: the record of each kind, the table of its fields, and the enum that holds them. Records stand
//! in boxes: a count takes a sixth of the room that the description of a bed does, and a book has many counts.

/// Declares records that stand inside lists.
#[macro_export]
macro_rules! records {
    ($($(#[$note:meta])* $name:ident { $($(#[$fnote:meta])* $field:ident: $type:ty,)* })*) => {$(
        $(#[$note])*
        #[derive(Clone, PartialEq, Debug, serde::Serialize, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        pub struct $name { $($(#[$fnote])* pub $field: $type,)* }

        impl $name {
            /// Its fields.
            pub const FIELDS: &'static [$crate::nursery::entry::shape::Field] = &[$(
                $crate::nursery::entry::shape::Field {
                    name: $crate::nursery::entry::shape::field_name(stringify!($field)),
                    shape: <$type as $crate::nursery::entry::shape::FieldType>::SHAPE,
                    required: <$type as $crate::nursery::entry::shape::FieldType>::REQUIRED,
                },
            )*];
        }
        impl $crate::nursery::entry::shape::FieldType for $name {
            const SHAPE: $crate::nursery::entry::shape::Shape = $crate::nursery::entry::shape::Shape::Record($name::FIELDS);
        }
    )*};
}

/// Declares a group of kinds of entry: `Record "kind_in_files", facts => { fields }`.
#[macro_export]
macro_rules! kinds {
    ($(#[$gnote:meta])* $group:ident; $($(#[$note:meta])* $name:ident $kind:literal, $facts:expr => {
        $($(#[$fnote:meta])* $field:ident: $type:ty,)* })*) => {
        $crate::records! { $($(#[$note])* $name { $($(#[$fnote])* $field: $type,)* })* }

        $(impl $name {
            const KIND: $crate::nursery::entry::KindOfEntry =
                $crate::nursery::entry::KindOfEntry { kind: $kind, fields: $name::FIELDS, facts: $facts };
        })*

        $(#[$gnote])*
        #[derive(Clone, PartialEq, Debug)]
        pub enum $group { $($(#[$note])* $name(Box<$name>),)* }

        impl $group {
            /// The kinds of this group.
            pub const KINDS: &'static [$crate::nursery::entry::KindOfEntry] = &[$($name::KIND,)*];

            /// Its kind.
            pub fn of_kind(&self) -> &'static $crate::nursery::entry::KindOfEntry {
                match self { $($group::$name(_) => &$name::KIND,)* }
            }

            /// Reads the body of a kind of this group; `None` where the kind is of another group.
            pub fn read(kind: &str, body: &str) -> Option<Result<$group, serde_json::Error>> {
                match kind {
                    $($kind => Some(serde_json::from_str(body).map($group::$name)),)*
                    _ => None,
                }
            }

            /// The body as JSON, absent fields as null.
            pub fn body(&self) -> serde_json::Value {
                let written = match self { $($group::$name(entry) => serde_json::to_value(entry),)* };
                written.unwrap_or(serde_json::Value::Null)
            }

            /// What the fields name, in their order, as far as the kind is about them.
            pub(super) fn named(&self) -> Vec<$crate::nursery::entry::subject::Subject> {
                let mut all = Vec::with_capacity(2);
                match self {
                    $($group::$name(entry) => {
                        const ABOUT: $crate::nursery::entry::subject::AboutFields = $name::KIND.facts.about;
                        $(if <$type as $crate::nursery::entry::shape::FieldType>::NAMES && ABOUT.takes($crate::nursery::entry::shape::field_name(stringify!($field))) {
                            all.extend($crate::nursery::entry::shape::FieldType::subject(&entry.$field));
                        })*
                    })*
                }
                all
            }
        }

        $(impl From<$name> for $crate::nursery::entry::What {
            fn from(entry: $name) -> Self { $group::$name(Box::new(entry)).into() }
        })*
    };
}
