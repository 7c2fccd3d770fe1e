//! The kinds of value that cross between the parts of the program.

pub mod zones;
