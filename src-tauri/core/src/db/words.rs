//! Enums kept as words in the coach file. A word no version writes is an error, never a default.

/// Gives each enum its words in the database.
macro_rules! words {
    ($($name:ident { $($variant:ident = $word:literal),+ $(,)? })+) => {$(
        impl rusqlite::ToSql for $name {
            fn to_sql(&self) -> rusqlite::Result<rusqlite::types::ToSqlOutput<'_>> {
                Ok(match self { $(Self::$variant => $word),+ }.into())
            }
        }

        impl rusqlite::types::FromSql for $name {
            fn column_result(value: rusqlite::types::ValueRef<'_>) -> rusqlite::types::FromSqlResult<Self> {
                match value.as_str()? {
                    $($word => Ok(Self::$variant),)+
                    other => Err(rusqlite::types::FromSqlError::other(crate::error::Unreadable(other.to_owned()))),
                }
            }
        }
    )+};
}

pub(crate) use words;
