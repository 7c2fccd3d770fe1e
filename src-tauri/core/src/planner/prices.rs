//! Prices for students' lessons, by linear programming.
//!
//! One choice is wanted for each day, and each student's lessons are to add up. Let the choices of a
//! day be mixed in any proportion, and what remains is a linear program whose prices say what one
//! more lesson of a student is worth. Any prices whatever give a lower bound on every plan
//! (Lagrange), good ones a close bound, so that only the bound's own arithmetic must be exact: here
//! floating-point numbers may be used, and a poor answer costs time, never a wrong plan.
//!
//! The simplex method in its revised form; a cost is four numbers compared one after the other, as
//! the wishes are.

/// A cost: the wishes in their order.
pub(super) type Cost = [f64; 4];

/// What counts as nothing.
const TINY: f64 = 1e-7;
/// So many exchanges are made at most; prices that are not the best yet are still prices.
const MOST: usize = 4_000;

/// A choice of a day: its cost, and how much it has of each row that it has any of.
pub(super) struct Column {
    pub cost: Cost,
    pub lessons: Vec<(usize, u32)>,
}

fn less(a: &Cost, b: &Cost) -> bool {
    for (a, b) in a.iter().zip(b) {
        let near = TINY * (1.0 + a.abs().max(b.abs()));
        if (a - b).abs() > near {
            return a < b;
        }
    }
    false
}

enum Enter {
    Choice(usize, usize),
    Missing(usize),
}

/// The price of each row's lesson: each student is a row. `days` holds the choices of each day;
/// `wished` says how many lessons each row has, `missing` what each that is missing costs.
pub(super) fn of(
    days: &[Vec<Column>],
    wished: &[u32],
    missing: &[f64],
    go_on: &dyn Fn() -> bool,
) -> Vec<Cost> {
    let (d, m) = (days.len(), days.len() + wished.len());
    // To begin with nobody is taught, and every lesson is missing.
    let mut inverse: Vec<Vec<f64>> =
        (0..m).map(|i| (0..m).map(|j| if i == j { 1.0 } else { 0.0 }).collect()).collect();
    let mut amounts: Vec<f64> =
        (0..m).map(|i| if i < d { 1.0 } else { f64::from(wished[i - d]) }).collect();
    let mut costs: Vec<Cost> =
        (0..m).map(|i| if i < d { [0.0; 4] } else { [missing[i - d], 0.0, 0.0, 0.0] }).collect();
    let mut prices = vec![[0.0; 4]; m];
    for _ in 0..MOST {
        for (i, price) in prices.iter_mut().enumerate() {
            *price = [0.0; 4];
            for (row, cost) in costs.iter().enumerate() {
                for n in 0..4 {
                    price[n] += cost[n] * inverse[row][i];
                }
            }
        }
        let Some(enter) = enter(days, missing, &prices).filter(|_| go_on()) else { break };
        let mut column = vec![0.0; m];
        let cost = match enter {
            Enter::Choice(day, choice) => {
                let entering = &days[day][choice];
                for (i, at) in column.iter_mut().enumerate() {
                    *at = inverse[i][day]
                        + entering
                            .lessons
                            .iter()
                            .map(|(s, n)| inverse[i][d + s] * f64::from(*n))
                            .sum::<f64>();
                }
                entering.cost
            }
            Enter::Missing(s) => {
                for (i, at) in column.iter_mut().enumerate() {
                    *at = inverse[i][d + s];
                }
                [missing[s], 0.0, 0.0, 0.0]
            }
        };
        let leaves = (0..m).filter(|i| column[*i] > TINY).min_by(|a, b| {
            (amounts[*a] / column[*a]).total_cmp(&(amounts[*b] / column[*b])).then(a.cmp(b))
        });
        let Some(leaves) = leaves else { break };
        exchange(&mut inverse, &mut amounts, leaves, &column);
        costs[leaves] = cost;
    }
    prices.split_off(d)
}

/// The column that lowers the cost most for each unit of it, if any does.
fn enter(days: &[Vec<Column>], missing: &[f64], prices: &[Cost]) -> Option<Enter> {
    let d = days.len();
    let (mut least, mut best) = ([0.0; 4], None);
    for (day, choices) in days.iter().enumerate() {
        for (choice, column) in choices.iter().enumerate() {
            let mut reduced = column.cost;
            for n in 0..4 {
                reduced[n] -= prices[day][n];
                for (s, lessons) in &column.lessons {
                    reduced[n] -= prices[d + s][n] * f64::from(*lessons);
                }
            }
            if less(&reduced, &least) {
                (least, best) = (reduced, Some(Enter::Choice(day, choice)));
            }
        }
    }
    for (s, cost) in missing.iter().enumerate() {
        let price = prices[d + s];
        let reduced = [cost - price[0], -price[1], -price[2], -price[3]];
        if less(&reduced, &least) {
            (least, best) = (reduced, Some(Enter::Missing(s)));
        }
    }
    best
}

fn exchange(inverse: &mut [Vec<f64>], amounts: &mut [f64], leaves: usize, column: &[f64]) {
    let pivot = column[leaves];
    for at in &mut inverse[leaves] {
        *at /= pivot;
    }
    amounts[leaves] /= pivot;
    let (row, amount) = (inverse[leaves].clone(), amounts[leaves]);
    for i in (0..inverse.len()).filter(|i| *i != leaves) {
        let by = column[i];
        if by != 0.0 {
            for (at, of) in inverse[i].iter_mut().zip(&row) {
                *at -= by * of;
            }
            amounts[i] = (amounts[i] - by * amount).max(0.0);
        }
    }
}

/// The least number by which all these prices become whole, up to some bound; the bound if there is
/// none. Prices of such a program are fractions with small denominators.
pub(super) fn denominator(prices: &[Cost]) -> i64 {
    const BOUND: i64 = 720;
    let whole = |by: i64| {
        prices.iter().flatten().all(|price| {
            let times = price * by as f64;
            (times - times.round()).abs() < 1e-6 * (1.0 + times.abs() * 1e-6)
        })
    };
    (1..=BOUND).find(|by| whole(*by)).unwrap_or(BOUND)
}
