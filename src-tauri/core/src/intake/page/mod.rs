//! The intake as a page that a student fills in at home, in any browser and without a network, and
//! the file of answers it makes. An answer changes nothing by itself: each is shown beside what is
//! kept, and taken one by one. The same questions can be printed, to be filled in by hand. It is never a consent and never an acknowledgement.

mod answers;
mod make;
mod on_paper;
mod questions;

pub use answers::{AnswerShown, AnswersRead, ReadAnswers, TakeAnswers, read, take};
pub use make::{MakePage, PageMade, file_name, make};
pub use on_paper::{BlankFor, blank};
