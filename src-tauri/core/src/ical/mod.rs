//! Calendar objects of RFC 5545, read and written; knows nothing of the rest of the program.

pub mod recur;
