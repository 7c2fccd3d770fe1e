//! What a court may not be.

use super::super::{Broken, Court, Edge, Line, Net, Pack, Surface, SurfaceId, Unit};
use super::Faults;

pub fn faults(pack: &Pack, faults: &mut Faults) {
    let court = &pack.court;
    faults.text("court.source", &court.source);
    for (field, length) in [("width", court.width), ("length", court.length)] {
        if !positive(length) {
            faults.add(format!("court.{field}"), "is no length");
        }
    }
    if court.height.is_some_and(|height| !positive(height)) {
        faults.add("court.height", "is no length");
    }
    surfaces(court, faults);
    match &court.net {
        Some(net) => check_net(court, net, faults),
        None if !court.has_walls() => {
            faults.add("court.net", "a court without walls has a net");
        }
        None => {}
    }
    if court.lines.is_empty() {
        faults.add("court.lines", "there is none");
    }
    faults.once("court.lines", "id", court.lines.iter().map(|line| line.id.as_str()));
    for (number, line) in court.lines.iter().enumerate() {
        check_line(court, line, pack.unit, &format!("court.lines[{number}]"), faults);
    }
}

fn positive(length: f64) -> bool {
    length.is_finite() && length > 0.0
}

fn surfaces(court: &Court, faults: &mut Faults) {
    if court.surface(SurfaceId::Floor).is_none() {
        faults.add("court.surfaces", "there is no floor");
    }
    let to_ceiling = court.surface(SurfaceId::Ceiling).is_some();
    for (number, surface) in court.surfaces.iter().enumerate() {
        let at = format!("court.surfaces[{number}]");
        if court.surfaces.iter().take(number).any(|other| other.id == surface.id) {
            faults.add(format!("{at}.id"), format!("{:?} is there twice", surface.id));
        }
        let across = match surface.id {
            SurfaceId::Left | SurfaceId::Right => court.length,
            _ => court.width,
        };
        let along_fits = match (surface.id.is_wall(), court.height) {
            (false, _) => surface.along == court.length,
            (true, Some(height)) if to_ceiling && !surface.at_least => surface.along == height,
            (true, Some(height)) => positive(surface.along) && surface.along <= height,
            (true, None) => positive(surface.along),
        };
        if surface.across != across {
            faults.add(format!("{at}.across"), format!("does not fit the court, {across}"));
        }
        if !along_fits {
            faults.add(format!("{at}.along"), "does not fit the court");
        }
        panels(surface, &at, faults);
    }
}

/// Pieces of a wall lie on it and do not cover one another.
fn panels(surface: &Surface, at: &str, faults: &mut Faults) {
    if !surface.panels.is_empty() && !surface.id.is_wall() {
        faults.add(format!("{at}.panels"), "only a wall is made of panels");
    }
    for (number, panel) in surface.panels.iter().enumerate() {
        let field = format!("{at}.panels[{number}]");
        let ([left, low], [right, high]) = (panel.from, panel.to);
        let on_it = 0.0 <= left
            && left < right
            && right <= surface.across
            && 0.0 <= low
            && low < high
            && high <= surface.along;
        if !on_it {
            faults.add(&field, "does not lie on the wall");
        }
        let covers = surface.panels.iter().take(number).any(|other| {
            left < other.to[0] && other.from[0] < right && low < other.to[1] && other.from[1] < high
        });
        if covers {
            faults.add(field, "covers another panel");
        }
    }
}

fn check_net(court: &Court, net: &Net, faults: &mut Faults) {
    faults.text("court.net.source", &net.source);
    if !(positive(net.at) && net.at < court.length) {
        faults.add("court.net.at", "the net stands inside the court");
    }
    if !(positive(net.centre) && net.centre <= net.sides && net.sides.is_finite()) {
        faults.add("court.net.centre", "the net is no higher in the middle than at its sides");
    }
    if !(net.posts_outside.is_finite() && net.posts_outside >= 0.0) {
        faults.add("court.net.posts_outside", "is 0 or more");
    }
}

fn check_line(court: &Court, line: &Line, unit: Unit, at: &str, faults: &mut Faults) {
    faults.text(format!("{at}.name"), &line.name);
    faults.text(format!("{at}.source"), &line.source);
    match court.surface(line.surface) {
        None => faults.add(format!("{at}.surface"), "the court has no such surface"),
        Some(surface) => {
            let (across, along) = (surface.across, surface.along);
            for (end, [x, y]) in [("from", line.from), ("to", line.to)] {
                if !((0.0..=across).contains(&x) && (0.0..=along).contains(&y)) {
                    faults.add(format!("{at}.{end}"), "leaves the surface it is painted on");
                }
            }
        }
    }
    if line.from == line.to {
        faults.add(format!("{at}.to"), "the line has no length");
    }
    let upright = matches!(line.measured, Edge::Lower | Edge::Upper);
    if upright && !line.surface.is_wall() {
        faults.add(format!("{at}.measured"), "only a line on a wall has a lower and an upper edge");
    }
    if !positive(line.width) {
        faults.add(format!("{at}.width"), "is no length");
    }
    if let Some(broken) = &line.broken {
        pieces(line, broken, unit, at, faults);
    }
}

fn pieces(line: &Line, broken: &Broken, unit: Unit, at: &str, faults: &mut Faults) {
    let length = (line.to[0] - line.from[0]).hypot(line.to[1] - line.from[1]);
    let pieces = broken.length();
    if pieces != length {
        let unit = unit.words();
        faults.add(
            format!("{at}.broken"),
            format!("the pieces add up to {pieces} {unit}, the line is {length}"),
        );
    }
    if broken.gaps != broken.dashes.saturating_add(1) {
        faults.add(format!("{at}.broken.gaps"), "gaps and dashes do not change in turn");
    }
}
