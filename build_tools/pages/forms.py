"""A form from a checker's declared inputs: one template a kind of field."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from build_tools.pages.rendering import html
from checkers.domain.inputs.fields import Choice, Input, Kind, Spec, inputs_of
from checkers.domain.inputs.parsing import NO, YES
from checkers.domain.quantities.quantity import COMPUTED_IN, format_quantity
from checkers.domain.tables.glossary import QUANTITIES

FEW = 6  # as many choices as fit on a phone as buttons, in rows of two or three
HALF = 21  # letters that fit in two lines of a list, on half the width of a phone
THIRD = 26  # letters that fit on a button, in its smaller letters, on a third of it
ENTRY = "[#]"  # stands for the number of an entry until the page adds one


@dataclass(frozen=True, slots=True)
class Button:
    """A choice as a button: its value, its name, and the few words under the name."""

    value: str
    name: str
    note: str
    also: str = ""  # further words that mean it, as an address may have them

    @property
    def leaves_open(self) -> bool:
        """Whether choosing it says nothing yet."""
        return self.value in {"", "unknown"}


YES_OR_NO = (
    Button("yes", "yes", "", " ".join(sorted(YES))),
    Button("no", "no", "", " ".join(sorted(NO))),
)


@dataclass(frozen=True, slots=True)
class Field:
    """One input on its way into a template; `key` is unique on the page."""

    name: str
    key: str
    spec: Spec
    required: bool
    default: str
    compact: bool

    @property
    def buttons(self) -> tuple[Button, ...]:
        """The choices as buttons, with an empty one where no choice is the default."""
        listed = tuple(_button(one) for one in self.spec.choices)
        buttons = YES_OR_NO if self.spec.kind is Kind.YES_NO else listed
        if self.default in {one.value for one in buttons}:
            return buttons
        empty = Button("", "choose" if self.required else "not said", "")
        return (empty, *buttons) if self.required else (*buttons, empty)

    @property
    def as_buttons(self) -> bool:
        """Whether the choices are few enough, and the place wide enough, for buttons."""
        return not self.compact and len(self.buttons) <= FEW

    @property
    def is_wordy(self) -> bool:
        """Whether a choice has more words than fit beside another."""
        most = THIRD if self.as_buttons else HALF
        return any(len(one.name) + len(one.note) > most for one in self.buttons)

    @property
    def hint(self) -> str:
        """What the field means, and what holds if it is left empty."""
        typed = self.spec.kind not in {Kind.CHOICE, Kind.CHOICE_OR_QUANTITY, Kind.YES_NO}
        empty = f"{self.default} if left empty." if typed and self.default else ""
        return " ".join(part for part in (self.spec.explain, empty) if part)


def _button(one: Choice) -> Button:
    name, _, note = one.label.partition(": ")
    return Button(one.value, name, note)


def form_fields(inputs: type[Any], form: str, leave_out: Collection[str] = ()) -> Markup:
    """Return the fields of an input dataclass as HTML.

    Inputs: the dataclass; the form's own name, which makes the fields' ids unique; the
    inputs that the page asks for in a way of its own.
    """
    return _fields(inputs, f"{form}-", compact=False, leave_out=leave_out)


def _fields(
    inputs: type[Any], path: str, *, compact: bool, leave_out: Collection[str] = ()
) -> Markup:
    listed = [one for one in inputs_of(inputs) if one.name not in leave_out]
    plain = [one for one in listed if not one.spec.advanced]
    further = [one for one in listed if one.spec.advanced]
    return html(
        "form/fields.html",
        plain=[_field(one, path, compact=compact) for one in plain],
        further=[_field(one, path, compact=compact) for one in further],
        further_labels=[one.spec.label for one in further],
    )


def _field(one: Input, path: str, *, compact: bool) -> Markup:
    key = f"{path}{one.name}"
    field = Field(one.name, key, one.spec, one.required, _default_text(one), compact)
    return html(f"form/{one.spec.kind}.html", field=field, inner=_inner(one.spec, key))


def _inner(spec: Spec, key: str) -> Markup | dict[str, Markup]:
    """Return the fields inside a field; those of a list's entry with its leading field apart."""
    if spec.group is None:
        return Markup()
    if spec.kind is not Kind.MANY:
        return _fields(spec.group, f"{key}.", compact=False)
    path, lead = f"{key}{ENTRY}.", spec.folded.lead if spec.folded else ""
    leading = [one for one in inputs_of(spec.group) if one.name == lead]
    return {
        "lead": Markup().join(_field(one, path, compact=True) for one in leading),
        "rest": _fields(spec.group, path, compact=True, leave_out={lead}),
    }


def _default_text(one: Input) -> str:
    if one.default is None or one.spec.group is not None:
        return ""
    if isinstance(one.default, bool):
        return "yes" if one.default else "no"
    if isinstance(one.default, float) and one.spec.quantity:
        return format_quantity(one.default, COMPUTED_IN[QUANTITIES[one.spec.quantity].kind])
    return str(one.default)
