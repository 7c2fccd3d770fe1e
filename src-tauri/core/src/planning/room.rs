//! What of a day could still be sold: the hours that are left of a facility's courts once the
//! coach's time is taken out. They are made of every lesson that still fits, so that no stretch is
//! too short for one and none breaks a limit.

use crate::kinds::stretches::{Stretch, joined, without};

/// A day at one facility, in minutes after its midnight.
#[derive(Clone, Debug, Default)]
pub struct Room {
    /// The length of the shortest lesson.
    pub least: u32,
    /// Minutes of lessons that the limits of the day leave; `None` without a limit.
    pub left: Option<u32>,
    /// The courts.
    pub courts: Vec<RoomOnCourt>,
    /// When the coach cannot be there: hours kept free, lessons, the ways to and from them.
    pub busy: Vec<Stretch>,
    /// The coach's lessons of the day, wherever they are.
    pub lessons: Vec<Stretch>,
    /// The most minutes of lessons without a break; `None` without a limit.
    pub longest_run: Option<u32>,
    /// The same of lessons on one court.
    pub longest_on_court: Option<u32>,
}

/// A court on that day.
#[derive(Clone, Debug, Default)]
pub struct RoomOnCourt {
    /// When it can be had.
    pub open: Vec<Stretch>,
    /// The coach's lessons on it.
    pub lessons: Vec<Stretch>,
}

/// The stretches in which a lesson still fits that begins where `starts` says one may.
pub fn room_for_lessons(room: &Room, starts: impl Fn(u32) -> bool) -> Vec<Stretch> {
    if room.least == 0 || room.left.is_some_and(|left| left < room.least) {
        return Vec::new();
    }
    let fits = |court: &RoomOnCourt, from: u32| {
        let lesson = (from, from + room.least);
        starts(from)
            && room.longest_run.is_none_or(|most| run(&room.lessons, lesson) <= most)
            && room.longest_on_court.is_none_or(|most| run(&court.lessons, lesson) <= most)
    };
    let mut lessons = Vec::new();
    for court in &room.courts {
        for (from, to) in without(&court.open, &room.busy) {
            let starts = from..=to.saturating_sub(room.least);
            let placed = starts.filter(|at| at + room.least <= to && fits(court, *at));
            lessons.extend(placed.map(|at| (at, at + room.least)));
        }
    }
    joined(lessons)
}

/// The minutes without a break that a lesson would be part of.
fn run(lessons: &[Stretch], lesson: Stretch) -> u32 {
    let all = joined(lessons.iter().copied().chain([lesson]));
    all.iter().find(|(from, to)| *from <= lesson.0 && lesson.1 <= *to).map_or(0, |(a, z)| z - a)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(open: &[Stretch]) -> Room {
        let court = RoomOnCourt { open: open.to_vec(), lessons: Vec::new() };
        Room { least: 60, courts: vec![court], ..Room::default() }
    }

    #[test]
    fn only_stretches_a_lesson_fits_into_are_free() {
        let at = |h: u32| h * 60;
        let any = |_: u32| true;
        let on_the_hour = |m: u32| m.is_multiple_of(60);
        let mut room = day(&[(at(9), at(12))]);
        assert_eq!(room_for_lessons(&room, any), [(at(9), at(12))]);
        room.busy = vec![(at(9), at(9) + 20), (at(11) + 30, at(12))];
        assert_eq!(room_for_lessons(&room, any), [(at(9) + 20, at(11) + 30)]);
        assert_eq!(
            room_for_lessons(&room, on_the_hour),
            [(at(10), at(11))],
            "bookings begin on the hour"
        );
        room.busy = vec![(at(9) + 59, at(11) + 1)];
        assert_eq!(room_for_lessons(&room, any), [], "59 minutes are none");
        room.busy.clear();
        room.left = Some(59);
        assert_eq!(room_for_lessons(&room, any), [], "the limit of the day leaves none");
        room.left = Some(60);
        assert_eq!(room_for_lessons(&room, any), [(at(9), at(12))]);
    }

    #[test]
    fn one_lesson_is_on_one_court() {
        let mut room = day(&[(600, 650)]);
        room.courts.push(RoomOnCourt { open: vec![(640, 690)], lessons: Vec::new() });
        assert_eq!(room_for_lessons(&room, |_| true), [], "50 minutes on each of two courts");
        room.courts.push(RoomOnCourt { open: vec![(645, 705)], lessons: Vec::new() });
        assert_eq!(room_for_lessons(&room, |_| true), [(645, 705)]);
    }

    #[test]
    fn a_run_is_not_made_longer_than_its_limit() {
        let mut room = day(&[(540, 780)]);
        (room.busy, room.lessons) = (vec![(540, 660)], vec![(540, 600), (600, 660)]);
        room.longest_run = Some(150);
        let quarters = |m: u32| m.is_multiple_of(15);
        assert_eq!(
            room_for_lessons(&room, quarters),
            [(675, 780)],
            "a break of a quarter of an hour first"
        );
        room.longest_run = Some(180);
        assert_eq!(room_for_lessons(&room, quarters), [(660, 780)]);
        room.longest_on_court = Some(90);
        assert_eq!(
            room_for_lessons(&room, quarters),
            [(660, 780)],
            "those lessons are on another court"
        );
        room.courts[0].lessons = room.lessons.clone();
        assert_eq!(room_for_lessons(&room, quarters), [(675, 780)]);
    }
}
