//! Goals: what is worked on, what the tries say about it, and what the program refuses to claim.

pub mod numbers;
