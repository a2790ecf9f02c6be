"""Which tests belong to a device under a code, in which order, and how binding each is."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from checkers.domain.codes.registry import CODES, CodeTest
from checkers.domain.device.abilities import Ability
from checkers.domain.device.device import DeviceType, Form
from checkers.domain.device.readings import Test
from checkers.domain.limits.tables import rows
from checkers.domain.sources.documents import Citation
from checkers.judgement.case import Case
from checkers.judgement.limits.current_bands import operating_band
from checkers.judgement.readings.installation_tests import is_judged

MODEL_CODE = "iec"
POSSIBLE = "possible"
COMMON = "possible: common practice"
STANDINGS = ("required", "advised", POSSIBLE, "not-required")
WAVEFORMS = ("ac", "half-wave", "half-wave-90", "half-wave-135", "composite", "smooth-dc")
TESTS = (Test.NO_TRIP, Test.TRIP_TIME, Test.RAMP, Test.BUTTON)


@dataclass(frozen=True, slots=True)
class PlannedTest:
    """One test of a plan, before its current and its limit are worked out.

    `current` [mA] stands instead of `multiple` where the test goes by a fixed current.
    `limits` is the key of the code's own limit table, if it has one. `asked_by` says who
    asks for it, in words.
    """

    test: str
    standing: str
    asked_by: str
    multiple: float | None = None
    current: float | None = None
    waveform: str = ""
    phases: tuple[str, ...] = ()
    lasting: float | None = None
    limits: str = ""
    note: str = ""
    sources: tuple[Citation, ...] = ()

    @property
    def order(self) -> tuple[int, int, int, float]:
        """Where the test stands: AC before DC, holding before tripping, the button last."""
        waveform = WAVEFORMS.index(self.waveform) if self.waveform in WAVEFORMS else 0
        level = self.multiple or self.current or 0.0
        return self.test == Test.BUTTON, waveform, TESTS.index(Test(self.test)), level


def planned_tests(case: Case) -> tuple[PlannedTest, ...]:
    """Return the tests of a device, in the order in which to make them.

    The tests that its code speaks of come with what the code says of them; those of the
    model code that it does not mention are added as possible.
    """
    if case.only_warns:
        return _of_a_monitor()
    own = [_from_code(test) for test in _strongest(_concerning(case, case.code.tests))]
    model = [_added(test, case) for test in _concerning(case, CODES[MODEL_CODE].tests)]
    named = {_what(test) for test in own}
    added = [test for test in (*model, *_by_fixed_current(case)) if _what(test) not in named]
    return tuple(sorted([*own, *added], key=lambda test: test.order))


def _concerning(case: Case, tests: Iterable[CodeTest]) -> list[CodeTest]:
    """Return the tests in force that concern the device; by its type only where it is known."""
    device, known = case.device_asked, case.device.type != DeviceType.UNKNOWN
    asked = {name: device[name] for name in ("type", "form", "delay", "rated")}
    return [
        test
        for test in tests
        if test.in_force(case.day) and test.concerns(**asked) and (known or not test.types)
    ]


def _strongest(tests: Iterable[CodeTest]) -> list[CodeTest]:
    """Return each test once, where a code speaks of it more than once: the most binding."""
    found: dict[tuple[str, float | None, str], CodeTest] = {}
    for test in sorted(tests, key=lambda one: STANDINGS.index(one.standing)):
        found.setdefault((test.test, test.multiple, test.waveform), test)
    return list(found.values())


def _what(test: PlannedTest) -> tuple[str, float | None, float | None, str]:
    return test.test, test.multiple, test.current, test.waveform


def _from_code(test: CodeTest) -> PlannedTest:
    return _planned(test, test.standing, _asked_by(test))


def _added(test: CodeTest, case: Case) -> PlannedTest:
    """Return a test of the model code that the code itself does not mention."""
    silent = "what this code asks was not read" if not case.code.tests else "this code is silent"
    asked_by = f"possible: {silent}; {_place(test)} has it"
    return _planned(test, POSSIBLE, COMMON if _is_practice(test) else asked_by)


def _asked_by(test: CodeTest) -> str:
    if _is_practice(test):
        return f"{test.standing}: common practice"
    in_service = " in service" if test.purpose == "in-service" else ""
    return {
        "required": f"required{in_service} by {_place(test)}",
        "advised": f"advised{in_service} by {_place(test)}",
        POSSIBLE: f"possible{in_service} under {_place(test)}",
        "not-required": f"not required by {_place(test)}; for finding a fault",
    }[test.standing]


def _is_practice(test: CodeTest) -> bool:
    return test.document == "trade-practice"


def _place(test: CodeTest) -> str:
    cited = test.citation
    return ", ".join(part for part in (cited.document, cited.edition, cited.clause) if part)


def _planned(test: CodeTest, standing: str, asked_by: str) -> PlannedTest:
    return PlannedTest(
        test=test.test,
        standing=standing,
        asked_by=asked_by,
        multiple=test.multiple,
        waveform=test.waveform,
        phases=test.phases,
        lasting=test.lasting,
        limits=test.limits if is_judged(test) else "",
        note=test.note,
        sources=(test.citation,),
    )


def _of_a_monitor() -> tuple[PlannedTest, ...]:
    """Return the tests of a monitor, which warns: its alarm on a rise, and its test function."""
    return (
        PlannedTest(Test.RAMP, POSSIBLE, COMMON, waveform="ac"),
        PlannedTest(Test.BUTTON, "advised", "advised: common practice"),
    )


def _by_fixed_current(case: Case) -> list[PlannedTest]:
    """Return the timed tests of devices whose standard names currents, not multiples."""
    if case.device.detects_dc:
        return _detector_steps(case)
    if not case.device.has(Ability.RATING_PRINTED):
        return _interrupter_steps(case)
    return []


def _detector_steps(case: Case) -> list[PlannedTest]:
    found = rows("trip-time", on=case.day, form=Form.RDC_DD.value, waveform="smooth-dc")
    return [
        PlannedTest(
            test=Test.TRIP_TIME,
            standing=POSSIBLE,
            asked_by=COMMON,
            current=row.when.current,
            waveform="smooth-dc",
            phases=("+", "-"),
        )
        for row in found
    ]


def _interrupter_steps(case: Case) -> list[PlannedTest]:
    band = operating_band(case, "ac")
    if band is None or band.at_most is None:
        return []
    return [
        PlannedTest(Test.TRIP_TIME, POSSIBLE, COMMON, current=band.at_most, waveform="ac"),
        PlannedTest(Test.RAMP, POSSIBLE, COMMON, waveform="ac"),
    ]
