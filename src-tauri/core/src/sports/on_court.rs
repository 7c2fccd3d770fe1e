//! Reading a published test's tables: seconds to points, points added up, a result to its level.

use super::pack::{OnCourtTest, TestPart};

impl TestPart {
    /// The points printed for a time in whole seconds. A time faster than the fastest one printed is
    /// given that one's points; a slower one than the slowest has none.
    pub fn points_for(&self, seconds: u32) -> Option<u32> {
        let fastest = self.seconds.last()?;
        if seconds <= fastest.seconds {
            return Some(fastest.points);
        }
        self.seconds.iter().find(|row| row.seconds == seconds).map(|row| row.points)
    }
}

impl OnCourtTest {
    /// The points of all parts together, in the order of the parts; `None` when there are more or
    /// fewer than there are parts, or one is above the most of its part.
    pub fn total(&self, points: &[u32]) -> Option<u32> {
        let fits = points.len() == self.parts.len()
            && self
                .parts
                .iter()
                .zip(points)
                .all(|(part, points)| part.most.is_none_or(|most| *points <= most));
        if !fits {
            return None;
        }
        points.iter().try_fold(0_u32, |sum, points| sum.checked_add(*points))
    }

    /// The level a result means in the table of that id; `None` below the lowest band, above the
    /// highest, or where there is no such table.
    pub fn level(&self, table: &str, result: u32) -> Option<&str> {
        let table = self.bands.iter().find(|bands| bands.id == table)?;
        let band = table
            .bands
            .iter()
            .find(|band| band.from <= result && band.to.is_none_or(|to| result <= to))?;
        Some(&band.level)
    }
}

#[cfg(test)]
mod tests {
    use crate::sports::{
        pack,
        pack::{OnCourtTest, TestPart},
    };

    fn test(sport: &str, id: &str) -> &'static OnCourtTest {
        pack(sport).and_then(|pack| pack.find_test(id)).expect("the test is in its pack")
    }

    fn part(id: &str) -> &'static TestPart {
        test("tennis", "itn").parts.iter().find(|part| part.id == id).expect("a part")
    }

    /// International Tennis Federation, ITN On Court Assessment Guide (2004) and its score sheet.
    #[test]
    fn the_itn_tables_are_the_printed_ones() {
        let itn = test("tennis", "itn");
        let most: Vec<_> = itn.parts.iter().map(|part| part.most).collect();
        assert_eq!(most, [Some(90), Some(72), Some(84), Some(108), Some(76)]);
        assert_eq!(itn.most, Some(430));
        let tries: Vec<_> = itn.parts.iter().map(|part| part.tries).collect();
        assert_eq!(tries, [Some(10), Some(8), Some(12), Some(12), None]);
        for (points, men, women) in [
            (56, None, None),
            (57, None, Some("ITN 10")),
            (74, None, Some("ITN 10")),
            (75, Some("ITN 10"), Some("ITN 10")),
            (105, Some("ITN 9"), Some("ITN 9")),
            (209, Some("ITN 7"), Some("ITN 5")),
            (210, Some("ITN 6"), Some("ITN 5")),
            (269, Some("ITN 4"), Some("ITN 3")),
            (344, Some("ITN 2"), Some("ITN 2")),
            (345, Some("ITN 2"), Some("ITN 1")),
            (362, Some("ITN 2"), Some("ITN 1")),
            (363, Some("ITN 1"), Some("ITN 1")),
            (430, Some("ITN 1"), Some("ITN 1")),
            (431, None, None),
        ] {
            assert_eq!(itn.level("men", points), men, "{points} men");
            assert_eq!(itn.level("women", points), women, "{points} women");
        }
        assert_eq!(itn.level("juniors", 300), None, "there is no such table");
    }

    /// The same guide: 28 s is printed as 12 points, the same as 29 s.
    #[test]
    fn mobility_is_read_as_printed() {
        let mobility = part("mobility");
        assert_eq!(mobility.seconds.len(), 26);
        for (seconds, points) in [
            (41, None),
            (40, Some(1)),
            (30, Some(11)),
            (29, Some(12)),
            (28, Some(12)),
            (27, Some(14)),
            (24, Some(18)),
            (20, Some(32)),
            (16, Some(61)),
            (15, Some(76)),
            (14, Some(76)),
        ] {
            assert_eq!(mobility.points_for(seconds), points, "{seconds} s");
        }
        assert_eq!(part("serve").points_for(20), None, "a part that is not timed");
    }

    #[test]
    fn parts_add_up_within_their_most() {
        let itn = test("tennis", "itn");
        assert_eq!(itn.total(&[90, 72, 84, 108, 76]), Some(430));
        assert_eq!(itn.total(&[0; 5]), Some(0));
        assert_eq!(itn.total(&[91, 0, 0, 0, 0]), None);
        assert_eq!(itn.total(&[1; 4]), None);
        assert_eq!(test("racquetball", "wall-volley").total(&[31, 24]), Some(55));
    }

    /// United States Professional Tennis Association, ADDvantage, February 2004: under 3:30
    /// professional, 3:30 to 3:44 champion, … 6:00 and over beginner.
    #[test]
    fn a_wall_time_is_read_both_ends_included() {
        let wall = test("tennis", "wall-200");
        for (seconds, level) in [
            (209, "professional"),
            (210, "champion"),
            (224, "champion"),
            (225, "tournament"),
            (254, "tournament"),
            (255, "advanced"),
            (299, "advanced"),
            (300, "average"),
            (359, "average"),
            (360, "beginner"),
            (9000, "beginner"),
        ] {
            assert_eq!(wall.level("all", seconds), Some(level), "{seconds} s");
        }
    }

    #[test]
    fn racquetball_norms_are_left_to_the_coach() {
        assert!(test("racquetball", "wall-volley").bands.is_empty());
    }
}
