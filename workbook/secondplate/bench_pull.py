"""Pulls the welded studs of the virtual bench with a tool on its nose ring: what came, force, and time.

Model: the weakest of rivet, stud, weld and head gives (``test_pull``, ``pull_chain``); first and second peak
stand to each other, and collar shear to collar crush, as the mechanics of ``tail_pull_out`` say; the plates
inside the nose ring yield at the limit load of a round plate; way, stretch and energy are those of
``pull_tool``. How high the peaks are is the day's hold of the rivet: mechanics know it to a factor of two.

Judgement: all scatter from rivet to rivet, how a dish grows beyond the limit load and when it is seen, and
the minutes. Each such number stands in data/bench_bands.csv or data/bench_limits.csv with its basis. No
measured trace and no count of real pulls stands behind it.
"""

from dataclasses import dataclass, replace

import numpy as np

from secondplate.bands import Band
from secondplate.bench_model import NUMBERS
from secondplate.bench_random import uniform
from secondplate.bench_settings import BENCH_BANDS, STUD_DIAMETERS_MM, drawn
from secondplate.bench_site import limit_load_n, pull_out_of
from secondplate.bench_weld import GAVE, test_pull
from secondplate.pull_chain import LoadChain
from secondplate.pull_tool import (
    STEEL_MODULUS_MPA,
    stored_energy_j,
    stroke_needed_mm,
    stud_stretch_mm,
    top_plate_dish_mm,
)
from secondplate.rivet import Rivet
from secondplate.threads import coarse_pitch_mm, stress_area_mm2

RESULTS = (
    "rivet out clean",
    "stud broke",
    "weld peeled",
    "head tore",
    "top plate dished",
    "second plate torn",
)
CLEAN, STUD, WELD, HEAD, DISHED, TORN = RESULTS
# What let go, and what is then said of the stud.
_SAID = dict(zip(GAVE[1:], (STUD, WELD, HEAD), strict=True))
_SCATTERED = (
    "hold from rivet to rivet",
    "collar shear from rivet to rivet",
    "collar crush from rivet to rivet",
    "limit load of the plates",
    "time of one pull",
)
_ALUMINIUM = {"elastic_modulus_mpa": 70_000.0, "poisson_ratio": 0.33}
_AREAS_MM2 = tuple(stress_area_mm2(size, pitch_mm=coarse_pitch_mm(size)) for size in STUD_DIAMETERS_MM)
_GRIPPED_MM = 30.0  # length of stud between weld and jaws; its stretch is a hundredth of the way


@dataclass(frozen=True, kw_only=True)
class StudPull:
    """What came of pulling a welded stud; single values, or arrays with one entry a stud.

    Parameters
    ----------
    result : str or array of str
        One of ``RESULTS``: what gave before the rivet came, else the worst that the pull did [-]
    rivet_out : bool or array of bool
        Whether the rivet came out [-]
    top_plate_dished : bool or array of bool
        Whether a dish is left that is seen, rivet out or not [-]
    second_plate_torn : bool or array of bool
        Whether the tail took a piece of the second plate along [-]
    force_n : float or array
        Greatest force of the pull [N]
    first_peak_n : float or array
        Force at which the tail leaves its cup, reached or not [N]
    second_peak_n : float or array
        Force at which the tail comes through the top plate, reached or not [N]
    spare : float or array
        Weakest of stud, weld and head over the force that the rivet asks for [-]
    lasting_dish_mm : float or array
        Dish that is left [mm]
    spring_back_mm : float or array
        Elastic lift of the plates under the first peak, or under the force that broke the chain [mm]
    stretch_mm : float or array
        Stretch of the stud under that force [mm]
    stroke_mm : float or array
        Stroke of the puller that this stud takes; to the break where it broke before the first peak [mm]
    energy_j : float or array
        Energy set free at a break, 0 where the rivet came out [J]
    minutes : float or array
        Time of the pull [min]

    Examples
    --------
    >>> RESULTS[0]
    'rivet out clean'
    """

    result: str
    rivet_out: bool
    top_plate_dished: bool
    second_plate_torn: bool
    force_n: float
    first_peak_n: float
    second_peak_n: float
    spare: float
    lasting_dish_mm: float
    spring_back_mm: float
    stretch_mm: float
    stroke_mm: float
    energy_j: float
    minutes: float


def _thrown(seed, number):
    """Throw the dice of each pull; without a seed every value is the likeliest."""
    if seed is None:
        return {name: np.asarray(BENCH_BANDS[name].best) for name in _SCATTERED}
    return {name: np.asarray(drawn(name, uniform(seed, name, number))) for name in _SCATTERED}


def _mechanics(site):
    """Return second over first peak, and collar shear over collar crush, as the mechanics see this joint."""
    pull = pull_out_of(site)
    forces = pull.modes.forces_n
    return (
        np.asarray(pull.second_peak_n.best) / pull.first_peak_n.best,
        np.asarray(forces["collar shear"].best) / forces["collar crush"].best,
    )


def _dishes_mm(force_n, site, scatter):
    """Return lasting dish and spring-back of both plates together, lying loose on each other."""
    top, second = np.asarray(site.top_plate_mm), np.asarray(site.second_plate_mm)
    tail = Rivet(rivet_length_mm=5.0).shank_diameter_mm / 2 + np.asarray(site.interlock_mm)
    limit = limit_load_n(
        load_radius_mm=tail,
        support_radius_mm=site.support_radius_mm,
        thickness_mm=np.sqrt(top**2 + second**2),  # moments of both add
        proof_stress_mpa=NUMBERS["proof stress of the plates"],
    ).best
    lasting = NUMBERS["dish for each limit load"] * np.maximum(force_n / (limit * scatter) - 1, 0)
    springing = top_plate_dish_mm(
        force_n=force_n,
        support_radius_mm=site.support_radius_mm,
        thickness_mm=np.cbrt(top**3 + second**3),  # stiffnesses of both add
        **_ALUMINIUM,
    ).best
    return np.round(lasting, 3) + 0.0, springing


def pull_studs(outcome, settings, job, site, *, seed, number):
    """Pull welded studs with a puller on its nose ring.

    Parameters
    ----------
    outcome : WeldOutcome
        The welds [-]
    settings : WeldSettings
        What was set for them [-]
    job : WeldJob
        Rivet and machine; its hold is that of the row, each rivet has its own [-]
    site : PullSite
        Joint and puller [-]
    seed : bytes or list of bytes or None
        Seed, or one for each pull; None gives every likeliest value, without scatter [-]
    number : int or array
        Number of the stud on its bench [-]

    Returns
    -------
    StudPull
        What came of each [-]

    Raises
    ------
    ValueError
        If the seed is not bytes or lengths do not fit together.

    Notes
    -----
    A second plate tears where its collar shears before it crushes. Source: see the text of the module.

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> from secondplate.bench_site import draw_site
    >>> from secondplate.bench_weld import weld
    >>> day, settings = b"a day at the shop", chart_settings(stud_diameter_mm=6)
    >>> job = replace(draw_job(day), current_share=1.0, voltage_v=30.0)
    >>> pull = pull_studs(weld(settings, job, seed=day, number=1), settings, job, draw_site(day),
    ...                   seed=day, number=1)
    >>> pull.result, pull.rivet_out
    ('rivet out clean', True)
    """
    dice = _thrown(seed, number)
    hold = np.round(np.asarray(job.rivet_hold_n) * dice["hold from rivet to rivet"])
    second_over_first, shear_over_crush = _mechanics(site)
    tested = test_pull(outcome, settings, replace(job, rivet_hold_n=np.clip(hold, 100, 20_000)))
    force, out = np.asarray(tested.force_n), np.asarray(tested.gave) == GAVE[0]
    shear = shear_over_crush * dice["collar shear from rivet to rivet"]
    torn = out & (np.round(shear, 6) < np.round(dice["collar crush from rivet to rivet"], 6))
    dish, _ = _dishes_mm(force, site, dice["limit load of the plates"])
    dished = dish >= NUMBERS["dish that is seen"]
    first = np.round(hold / np.maximum(second_over_first, 1))
    found = {
        "result": _results(np.asarray(tested.gave), torn, dished),
        "rivet_out": out,
        "top_plate_dished": dished,
        "second_plate_torn": torn,
        "force_n": force,
        "first_peak_n": first,
        "second_peak_n": np.round(first * second_over_first),
        "spare": np.round(_spare(outcome, hold), 3),
        "lasting_dish_mm": dish,
        **_ways(settings, site, np.minimum(force, first), broke_early=~out & (force <= first)),
        "energy_j": _set_free_j(force, out),
        "minutes": np.round(dice["time of one pull"], 3),
    }
    shape = np.broadcast_shapes(*(np.shape(value) for value in found.values()))
    return StudPull(**{name: _given(value, shape) for name, value in found.items()})


def _given(value, shape):
    """Return one value of a pull as a single thing, or as an array as long as the others."""
    array = np.broadcast_to(value, shape)
    return array if shape else array.item()


def _results(gave, torn, dished):
    """Name each pull: what gave before the rivet, else the worst that the pull did to a plate."""
    broke = [gave == name for name in GAVE[1:]]
    return np.select([*broke, torn, dished], [*_SAID.values(), TORN, DISHED], default=CLEAN)


def _spare(outcome, hold_n):
    """Return what the chain of each pull has to spare over the force that its rivet asks for."""
    chain = {
        "stud": outcome.stud_strength_n,
        "weld": outcome.strength_n,
        "head": outcome.head_strength_n,
    }
    needed = np.asarray(hold_n, dtype=float)
    links = {name: _exactly(np.asarray(strength, dtype=float)) for name, strength in chain.items()}
    return np.asarray(LoadChain(links_n=links, needed_n=_exactly(needed)).safety_factor.best)


def _exactly(value):
    """Return a band without width: the bench knows what it drew."""
    return Band(low=value, best=value, high=value, basis="drawn at the bench")


def _ways(settings, site, force_n, *, broke_early):
    """Return spring-back, stretch and stroke of each pull: until the rivet is clear, or the chain broke."""
    _, springing = _dishes_mm(force_n, site, 1.0)
    stretch = stud_stretch_mm(
        force_n=force_n,
        stretched_length_mm=_GRIPPED_MM,
        stress_area_mm2=np.interp(settings.stud_diameter_mm, STUD_DIAMETERS_MM, _AREAS_MM2),
        elastic_modulus_mpa=STEEL_MODULUS_MPA,
    )
    rise = force_n / NUMBERS["stiffness of the puller"] + springing + stretch
    clear = stroke_needed_mm(
        rivet_length_mm=site.rivet_length_mm, spring_back_mm=rise, grip_set_mm=NUMBERS["way of the jaws"]
    )
    return {
        "spring_back_mm": np.round(springing, 3),
        "stretch_mm": np.round(stretch, 4),
        "stroke_mm": np.round(np.where(broke_early, NUMBERS["way of the jaws"] + rise, clear), 2),
    }


def _set_free_j(force_n, out):
    """Return the energy that a break sets free; nothing flies where the rivet came."""
    stored = stored_energy_j(force_n=force_n, stiffness_n_mm=NUMBERS["stiffness of the puller"])
    return np.round(np.where(out, 0.0, stored), 4)
