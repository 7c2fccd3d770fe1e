//! An invented two-page letter with a chart, a court and a table, for the outside checks and the
//! bench. Every person, place and number in it is made up.

use carryover_core::print::{Anchor, Ink, Mark, Paper, Piece, Sheet, Stroke, Weight};

/// Names from several scripts, as a coach's students have them.
pub const NAMES: [&str; 5] = ["Zoë Łukasiewicz", "Þórður", "Ελλάδα", "Київ", "渡辺"];

/// The letter.
pub fn letter() -> Sheet {
    let text = |words: &str| Piece::Text(words.into());
    let heading = |words: &str| Piece::Heading(words.into());
    Sheet {
        title: "Progress letter for Zoë Łukasiewicz <May & June>".into(),
        language: "en-GB".into(),
        author: "Marta Vell".into(),
        issued: "2026-06-19T17:30:00Z".parse().expect("a fixed instant"),
        paper: Paper::A4,
        letterhead: vec![
            "Marta Vell".into(),
            "Squash and racquetball lessons".into(),
            "4 Harbour Row, Ellmouth".into(),
            "marta@vell.example · +00 555 0142".into(),
        ],
        pieces: vec![
            Piece::Note("Ellmouth, 19 June 2026".into()),
            Piece::Title("Zoë Łukasiewicz: four days in Ellmouth".into()),
            text("Dear Zoë,"),
            text("the best thing of this visit was your patience at the back. In the last game you played eleven rallies in a row without once going for a drop from behind the short line, and you won eight of them. That is the habit we set out to build in March, and it held when the score was against you."),
            text("We spent most of the week on the straight drive from the backhand corner, first fed, then live, and from the second day on in set games. What changed is your preparation: the racket is up before the ball reaches the side wall. Þórður and 渡辺 はるか shared two of the lessons; the greetings to Ελλάδα and Київ are delivered."),
            heading("What moved"),
            text("Straight backhand drives that died in the back corner, counted live. The aim was 12 of 20; the grey line is the rough range of the true rate, the red line the aim."),
            chart(),
            Piece::Note("An open ring is a retest before any coaching; a filled dot is the test on the last day.".into()),
            heading("What is kept, and what is carried"),
            text("The split step is kept: 17 of 20 at the retest, 18 of 20 at the end, and nobody had to remind you. The straight drive is carried to the next visit, because 13 of 20 on one afternoon is a good sign and not yet a habit. The high serve is carried too; it has had too few chances in games to say anything."),
            court(),
            Piece::Note("The path of the straight drive: from the backhand corner to the front wall, and dead in the corner it came from.".into()),
            heading("Until we meet again"),
            Piece::Bullets(vec![
                "Straight drives alone on court: 3 times a week, 60 balls, count the ones that bounce twice behind the service box.".into(),
                "Ghosting to the backhand corner: 2 times a week, 6 rounds of 45 seconds, racket up before the turn.".into(),
                "One game a week in which every ball from behind the short line goes straight.".into(),
            ]),
            text("Write down what you managed, also the weeks with nothing. It is marked in your record as told by you, and it helps to choose where to begin."),
            heading("The counts behind this letter"),
            counts(),
            text("If the knee that was sore on Wednesday is not quiet in a few days, please let a doctor or physiotherapist look at it before you play on; I cannot judge that."),
            text("I expect to be in Ellmouth again in the second half of September and will write in August to ask for your days."),
            text("Marta Vell"),
        ],
        footer: "Marta Vell · counts are taken by hand during lessons".into(),
        page_words: "Page {n} of {m}".into(),
    }
}

fn counts() -> Piece {
    let row = |cells: [&str; 5]| cells.map(String::from).to_vec();
    Piece::Table {
        head: row(["Day", "Goal", "Condition", "Made", "Tries"]),
        rows: vec![
            row(["16 June", "Straight drive, backhand", "retest, live", "7", "20"]),
            row(["16 June", "Split step before the return", "retest, set game", "17", "20"]),
            row(["17 June", "Straight drive, backhand", "fed", "31", "40"]),
            row(["17 June", "High serve to the left box", "set game", "4", "9"]),
            row([
                "18 June",
                "Straight drive, backhand",
                "live, shared lesson with 渡辺 はるか",
                "22",
                "40",
            ]),
            row(["19 June", "Straight drive, backhand", "test, live", "13", "20"]),
            row(["19 June", "Split step before the return", "test, set game", "18", "20"]),
        ],
        right_aligned: vec![3, 4],
    }
}

fn line(points: &[(f32, f32)], width: f32, ink: Ink) -> Mark {
    Mark::Line { points: points.to_vec(), width, ink, dash: None }
}

fn words(at: (f32, f32), anchor: Anchor, ink: Ink, words: &str) -> Mark {
    Mark::Text { at, size: 9.0, weight: Weight::Plain, anchor, ink, words: words.into() }
}

fn chart() -> Piece {
    // (x, made, tries, range from and to, first of the visit)
    let tests = [
        (90.0, 5.0, 20.0, (0.11, 0.47), true, "March"),
        (150.0, 9.0, 20.0, (0.26, 0.66), false, ""),
        (250.0, 7.0, 20.0, (0.18, 0.57), true, "June"),
        (310.0, 22.0, 40.0, (0.40, 0.69), false, ""),
        (370.0, 13.0, 20.0, (0.43, 0.82), false, ""),
    ];
    let y = |rate: f32| 110.0 - 100.0 * rate;
    let mut marks = Vec::new();
    for (rate, label) in [(0.0, "0"), (0.5, "half"), (1.0, "all")] {
        marks.push(line(&[(40.0, y(rate)), (440.0, y(rate))], 0.4, Ink::Rule));
        marks.push(words((34.0, y(rate) + 3.0), Anchor::End, Ink::Soft, label));
    }
    marks.push(line(&[(40.0, y(0.6)), (440.0, y(0.6))], 0.8, Ink::Line));
    marks.push(words((440.0, y(0.6) - 4.0), Anchor::End, Ink::Soft, "aim 12 of 20"));
    marks.push(Mark::Line {
        points: vec![(150.0, y(0.45)), (250.0, y(0.35))],
        width: 1.0,
        ink: Ink::Ball,
        dash: Some((1.0, 3.0)),
    });
    marks.push(line(&[(90.0, y(0.25)), (150.0, y(0.45))], 1.4, Ink::Ball));
    marks.push(line(&[(250.0, y(0.35)), (310.0, y(0.55)), (370.0, y(0.65))], 1.4, Ink::Ball));
    for (x, made, tries, (from, to), first, month) in tests {
        marks.push(line(&[(x, y(from)), (x, y(to))], 1.0, Ink::Soft));
        let stroke = Some(Stroke { ink: Ink::Ball, width: 1.4 });
        if first {
            // The ring is open: paper shows through the line it stands on.
            marks.push(Mark::Circle {
                centre: (x, y(made / tries)),
                radius: 3.6,
                fill: None,
                stroke,
            });
        } else {
            let fill = Some(Ink::Ball);
            marks.push(Mark::Circle { centre: (x, y(made / tries)), radius: 3.6, fill, stroke });
        }
        marks.push(words((x, 124.0), Anchor::Middle, Ink::Ink, &format!("{made} of {tries}")));
        marks.push(words((x, 137.0), Anchor::Middle, Ink::Soft, month));
    }
    let alt = "Chart: straight backhand drives made. March: 5 of 20, then 9 of 20. June: 7 of 20 at the retest, 22 of 40, and 13 of 20 at the test; the aim is 12 of 20.";
    Piece::Figure { alt: alt.into(), width_pt: 450.0, height_pt: 142.0, marks }
}

fn court() -> Piece {
    // 12 points to the metre of a singles court (from memory, for the drawing only):
    // 9.75 m by 6.4 m, short line 4.26 m from the back wall, boxes 1.6 m.
    let m = |x: f32, y: f32| (10.0 + 12.0 * x, 6.0 + 12.0 * y);
    let (wide, long, short) = (6.4, 9.75, 9.75 - 4.26);
    let mut marks = vec![
        line(&[m(0.0, 0.0), m(wide, 0.0), m(wide, long), m(0.0, long), m(0.0, 0.0)], 1.2, Ink::Ink),
        line(&[m(0.0, short), m(wide, short)], 0.9, Ink::Line),
        line(&[m(wide / 2.0, short), m(wide / 2.0, long)], 0.9, Ink::Line),
        line(&[m(1.6, short), m(1.6, short + 1.6), m(0.0, short + 1.6)], 0.9, Ink::Line),
        line(
            &[m(wide - 1.6, short), m(wide - 1.6, short + 1.6), m(wide, short + 1.6)],
            0.9,
            Ink::Line,
        ),
        Mark::Line {
            points: vec![m(0.8, 8.6), m(0.55, 0.0), m(0.3, 9.3)],
            width: 1.2,
            ink: Ink::Ball,
            dash: Some((4.0, 2.5)),
        },
        Mark::Circle { centre: m(0.8, 8.6), radius: 3.0, fill: Some(Ink::Maple), stroke: None },
        words((110.0, 20.0), Anchor::Start, Ink::Ink, "1  the front wall, well above the tin"),
        words((110.0, 113.0), Anchor::Start, Ink::Ink, "2  second bounce behind the service box"),
    ];
    marks.push(line(&[m(0.55, 0.9), (106.0, 17.0)], 0.4, Ink::Soft));
    marks.push(line(&[m(0.3, 8.9), (106.0, 110.0)], 0.4, Ink::Soft));
    let alt = "Court seen from above: the ball goes from the left back corner straight to the front wall and back along the left side wall.";
    Piece::Figure { alt: alt.into(), width_pt: 330.0, height_pt: 130.0, marks }
}
