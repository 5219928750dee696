"""Marks for a log of the virtual bench: each rule of work that was kept earns its share of the points."""

from collections import defaultdict

from grading.bench_logs import end_of, read_typed_log, weld_at
from grading.part_results import CORRECT, FAULTS, UNANSWERED, Outcome, PartResult, invalid
from secondplate.bench import WeldSettings, in_window, judge_log, judge_logs

NO_END = 'this log has no end yet: press "Now the row" or "Stop", then save it'
_POINT_NOISE = 9  # digits: weights such as 0.2 do not add up to 1 exactly


def score_bench(part, key, typed):
    """Score one log against the day that it was worked on."""
    if typed in ("", []):
        return UNANSWERED
    log, problem = read_typed_log(part, key, typed)
    if problem:
        return invalid(problem)
    if not end_of(log):
        return invalid(NO_END)
    broken = [rule for rule in part.criteria if not met(part, key, log, rule.id)]
    if not broken:
        return CORRECT
    findings = judged(part, key, log)
    earned = round(1.0 - sum(rule.weight for rule in broken), _POINT_NOISE)
    ids = [rule.slip.id for rule in broken]
    return PartResult(
        outcome=Outcome.PARTLY if earned > 0.0 else Outcome.SLIP,
        fraction=max(earned, 0.0),
        slip_id=ids[0],
        more_slip_ids=tuple(ids[1:]),
        sentence=" ".join(_said(rule, getattr(findings, rule.id), log) for rule in broken),
    )


def met(part, key, log, rule):
    """Tell whether a log kept a rule.

    Whoever stops has reached a good setting only where the last one was good, or where the very setting that
    the day began with spoils the head: else three idle tries, or a head burnt on purpose, would earn it.
    """
    if not getattr(judged(part, key, log), rule).met:
        return False
    idle = len({tuple(settings.values()) for settings in log.welds}) < 2
    reached = rule == "reached_window" or (idle and rule in ("one_change", "right_direction"))
    if not reached or end_of(log) != "stop":
        return True
    return _stands_inside(key, log) or (idle and log.why == "head" and log.welds[0] == dict(key.start))


def _stands_inside(key, log):
    """Tell whether the last stud was welded with a setting inside the window."""
    return bool(log.welds) and in_window(WeldSettings(**log.welds[-1]), key.job)


def _said(rule, finding, log):
    """Return the sentence of a broken rule, with the stud at which it was broken where there are several."""
    welds = sorted({weld_at(log, step) for step in finding.failed_steps})
    if len(log.welds) < 2 or not welds or welds == [len(log.welds)]:
        return rule.slip.sentence
    studs = ", ".join(map(str, welds))
    return f"{rule.slip.sentence} (Stud {studs}.)"


def judged(part, key, log):
    """Return the judgement of a log, from those made ahead where it is among them."""
    name = name_of(part, log)
    if name not in key.worked:
        key.worked[name] = judge_log(log, key.job, key.seed, tries=part.tries)
    return key.worked[name]


def name_of(part, log):
    """Return what tells the judgement of a log from that of another on the same day."""
    return (part.tries, log.steps, log.why, *(tuple(settings.values()) for settings in log.welds))


def judge_ahead(logs):
    """Judge the logs ``(part, key, typed)`` of many learners in few calls; their keys keep what was found.

    What cannot be read or judged is left to ``score_bench``, which says why.
    """
    by_rule = defaultdict(list)
    for part, key, typed in logs:
        try:
            log, problem = read_typed_log(part, key, typed)
        except FAULTS:
            continue  # scoring this answer meets the same fault and reports it
        if not problem and name_of(part, log) not in key.worked:
            by_rule[part.tries].append((part, key, log))
    for tries, todo in by_rule.items():
        _, keys, read = zip(*todo, strict=True)
        try:
            found = judge_logs(read, [key.job for key in keys], [key.seed for key in keys], tries=tries)
        except FAULTS:
            continue
        for (part, key, log), judgement in zip(todo, found, strict=True):
            key.worked[name_of(part, log)] = judgement
