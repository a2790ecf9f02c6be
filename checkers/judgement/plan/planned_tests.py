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
from checkers.wording.book import part

MODEL_CODE = "iec"
REQUIRED, ADVISED, POSSIBLE, NOT_REQUIRED = "required", "advised", "possible", "not-required"
STANDINGS = (REQUIRED, ADVISED, POSSIBLE, NOT_REQUIRED)
ASKED_BY = {
    REQUIRED: "plan.required-by",
    ADVISED: "plan.advised-by",
    POSSIBLE: "plan.possible-under",
    NOT_REQUIRED: "plan.not-required-by",
}
ASKED_IN_SERVICE_BY = ASKED_BY | {
    REQUIRED: "plan.required-in-service-by",
    ADVISED: "plan.advised-in-service-by",
    POSSIBLE: "plan.possible-in-service-under",
}
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
    code = "plan.possible-code-silent" if case.code.tests else "plan.possible-code-not-read"
    practice = _is_practice(test)
    asked_by = common_practice(POSSIBLE) if practice else part(code, place=_place(test))
    return _planned(test, POSSIBLE, asked_by)


def _asked_by(test: CodeTest) -> str:
    if _is_practice(test):
        return common_practice(test.standing)
    codes = ASKED_IN_SERVICE_BY if test.purpose == "in-service" else ASKED_BY
    return part(codes[test.standing], place=_place(test))


def common_practice(standing: str) -> str:
    """Return who asks for a test that no document does, in words."""
    return part("plan.common-practice", standing=standing)


def _is_practice(test: CodeTest) -> bool:
    return test.document == "trade-practice"


def _place(test: CodeTest) -> str:
    cited = test.citation
    return ", ".join(one for one in (cited.document, cited.edition, cited.clause) if one)


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
        PlannedTest(Test.RAMP, POSSIBLE, common_practice(POSSIBLE), waveform="ac"),
        PlannedTest(Test.BUTTON, ADVISED, common_practice(ADVISED)),
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
            asked_by=common_practice(POSSIBLE),
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
    asked_by = common_practice(POSSIBLE)
    return [
        PlannedTest(Test.TRIP_TIME, POSSIBLE, asked_by, current=band.at_most, waveform="ac"),
        PlannedTest(Test.RAMP, POSSIBLE, asked_by, waveform="ac"),
    ]
