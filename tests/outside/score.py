"""Compares score with an independent reading of the rules, and with scores worked out by hand."""

import random

from lines import Tally, ask, binary


def expected(rules, first, winners, given):
    """The same rules read another way: the rallies are dealt out game by game, each game a list of
    who scored, its length told by the shortest prefix that wins."""
    rallies = list(winners)
    games, won, server = [], {"a": 0, "b": 0}, first
    both = rules.get("both_serve", False)

    def stand(side, hand, winner=None):
        numbered = {"server": hand} if both and side else {}
        return {"games": games, "serving": side, **numbered, "winner": winner}

    for number, game in enumerate(rules["games"]):
        opener, scored, done = server, [], False
        # The hands of a service turn, spent one by one; the opener of a game has the last alone.
        hand = 2
        while rallies and not done:
            if server is None:
                return "refused"
            rally = rallies.pop(0)
            if rules["scoring"] == "rally" or rally == server:
                scored.append(rally)
            if rally != server and both and hand == 1:
                hand = 2
            elif rally != server:
                server, hand = rally, 1
            high, low = sorted((scored.count("a"), scored.count("b")), reverse=True)
            done = high >= game["to"] and high - low >= game["win_by"]
        games.append([scored.count("a"), scored.count("b")])
        if not done:
            return stand(server, hand)
        winner = scored[-1]
        won[winner] += 1
        if won[winner] == rules["games_to_win"]:
            if rallies:
                return "refused"
            return stand(None, None, winner)
        server = {
            "other": "b" if opener == "a" else "a",
            "winner": winner,
            "given": given[number] if number < len(given) else None,
        }[rules["next_server"]]
    raise AssertionError("as many games as can be played always end a match")


def any_rules(random_):
    to_win = random_.randint(1, 3)
    scoring = random_.choice(["server", "rally"])
    both = {"both_serve": random_.random() < 0.5} if scoring == "server" else {}
    return {
        **both,
        "scoring": scoring,
        "games": [{"to": random_.choice([1, 3, 5, 11, 15, 21]), "win_by": random_.randint(1, 3)}
                  for _ in range(2 * to_win - 1)],
        "games_to_win": to_win,
        "next_server": random_.choice(["other", "winner", "given"]),
    }


def any_match(random_):
    """Rules, rallies and what they come to; a few go on after the match, a few lack a server."""
    rules, first = any_rules(random_), random_.choice("ab")
    most = 2 * rules["games_to_win"] - 2
    given = ""
    if rules["next_server"] == "given":
        given = "".join(random_.choice("ab") for _ in range(random_.randint(max(0, most - 1), most)))
    strength = random_.choice([0.2, 0.5, 0.5, 0.7, 0.9])
    winners = ""
    for _ in range(random_.choice([0, 1, 5, 20, 60, 150, 400])):
        rally = "a" if random_.random() < strength else "b"
        # Most matches stop where they are over.
        if expected(rules, first, winners + rally, given) == "refused" and random_.random() < 0.8:
            break
        winners += rally
    one = {"rules": rules, "first_server": first, "winners": winners}
    if given or random_.random() < 0.1:
        one["next_servers"] = given
    return one, expected(rules, first, winners, given)


def against_another_reading(program, tally, random_):
    matches = [any_match(random_) for _ in range(800)]
    kinds = {"refused": 0, "over": 0, "in play": 0}
    for (one, want), got in zip(matches, ask(program, "score", [one for one, _ in matches])):
        if want == "refused":
            kinds["refused"] += 1
            problems = got.get("error", {}).get("problems", [])
            tally.check(f"score {one}", len(problems) == 1, f"{got} where a refusal is expected")
        else:
            kinds["over" if want["winner"] else "in play"] += 1
            tally.check(f"score {one}", got == want, f"{got} where {want} is expected")
    for kind, count in kinds.items():
        tally.check(f"matches of kind {kind}", count >= 20, kinds)


USAR = {"scoring": "server", "games_to_win": 2, "next_server": "other",
        "games": [{"to": 15, "win_by": 1}, {"to": 15, "win_by": 1}, {"to": 11, "win_by": 1}]}
IRF = {"scoring": "rally", "games_to_win": 3, "next_server": "given",
       "games": [{"to": 15, "win_by": 1}] * 4 + [{"to": 11, "win_by": 2}]}
TO_11 = {"scoring": "rally", "games_to_win": 1, "next_server": "winner",
         "games": [{"to": 11, "win_by": 2}]}


def by_hand(program, tally):
    """USA Racquetball Official Rules, rules 1 and 3 (side-out, 15, 15 and 11, no lead of two);
    International Racquetball Federation, rally scoring from 1 February 2022 (15 by one, the fifth
    game to 11 by two); World Squash Singles Rules 2010 (to 11 by two)."""
    level = "ab" * 10
    whole = "a" * 15 + "b" * 15
    cases = [
        (USAR, "aabb", "", [[2, 1]], "b", None),
        (IRF, "aabb", "", [[2, 2]], "b", None),
        (USAR, "a" * 15, "", [[15, 0], [0, 0]], "b", None),
        # A wins the first game, takes the service back with a rally, and wins the second.
        (USAR, "a" * 31, "", [[15, 0], [15, 0]], None, "a"),
        # Service changes without a point: a rally each in turn scores nothing after the first.
        (USAR, "abababab", "", [[1, 0]], "b", None),
        (USAR, "a" * 14 + "b" + "b" * 14 + "a" + "a", "", [[15, 14], [0, 0]], "b", None),
        (TO_11, level + "a", "", [[11, 10]], "a", None),
        (TO_11, level + "aa", "", [[12, 10]], None, "a"),
        (TO_11, level + "abab" + "a", "", [[13, 12]], "a", None),
        (IRF, whole + whole + level + "a", "baba", [[15, 0], [0, 15]] * 2 + [[11, 10]], "a", None),
        (IRF, whole + whole + level + "aa", "baba", [[15, 0], [0, 15]] * 2 + [[12, 10]], None, "a"),
        (IRF, "ab" * 14 + "a", "a", [[15, 14], [0, 0]], "a", None),
        (IRF, "a" * 15, "", [[15, 0], [0, 0]], None, None),
        (USAR, "", "", [[0, 0]], "a", None),
    ]
    inputs = []
    for rules, winners, given, *_ in cases:
        one = {"rules": rules, "first_server": "a", "winners": winners}
        inputs.append({**one, "next_servers": given} if given else one)
    for (_, winners, _, games, serving, winner), got in zip(cases, ask(program, "score", inputs)):
        want = {"games": games, "serving": serving, "winner": winner}
        tally.check(f"by hand {winners}", got == want, f"{got} where {want} is expected")


def refused(program, tally):
    """Each with the one field that is wrong."""
    sound = {"rules": USAR, "first_server": "a", "winners": "ab"}

    def rules(**change):
        return {**sound, "rules": {**USAR, **change}}

    cases = [
        ({**sound, "winners": "abc"}, "winners"),
        ({**sound, "winners": ["a"]}, "winners"),
        ({**sound, "winners": "a" * 32}, "winners"),
        ({**sound, "first_server": "A"}, "first_server"),
        ({**sound, "next_servers": "ab"}, "next_servers"),
        ({**sound, "next_server": "b"}, "next_server"),
        (rules(next_server="given"), None),
        ({**rules(next_server="given"), "next_servers": "aba"}, "next_servers"),
        ({**rules(next_server="given"), "winners": "a" * 16}, "next_servers"),
        (rules(scoring="both"), "rules.scoring"),
        (rules(both_serve="yes"), "rules.both_serve"),
        (rules(scoring="rally", both_serve=True), "rules.both_serve"),
        (rules(games_to_win=3), "rules.games"),
        (rules(games_to_win=0), "rules.games_to_win"),
        (rules(games=[{"to": 15, "win_by": 1}, {"to": 0, "win_by": 1}, {"to": 11, "win_by": 1}]),
         "rules.games[1].to"),
        (rules(games=[{"to": 15, "win_by": 1}, {"to": 15}, {"to": 11, "win_by": 1}]),
         "rules.games[1].win_by"),
        (rules(games=[{"to": 15, "win_by": 1}] * 2 + [{"to": 11, "win_by": 1, "cap": 12}]),
         "rules.games[2].cap"),
    ]
    for (one, field), got in zip(cases, ask(program, "score", [one for one, _ in cases])):
        fields = [problem["field"] for problem in got.get("error", {}).get("problems", [])]
        want = [] if field is None else [field]
        tally.check(f"refused {one}", fields == want, f"{got} where {want} is expected")


def main():
    program = binary(__doc__)
    tally = Tally()
    against_another_reading(program, tally, random.Random(1511))
    by_hand(program, tally)
    refused(program, tally)
    tally.end()


if __name__ == "__main__":
    main()
