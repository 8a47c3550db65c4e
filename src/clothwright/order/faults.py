"""What is wrong with a row or a table of an order, in plain sentences."""

from collections.abc import Mapping

from pydantic import BaseModel, ValidationError

from clothwright.units import did_you_mean


def sentences(
    error: ValidationError,
    model: type[BaseModel],
    place: str,
    said: Mapping[str, str] | None = None,
) -> list[str]:
    """A plain sentence for every fault that a model finds in its row. `said` gives
    fields that the user knows by another name."""
    out = []
    for e in error.errors(include_url=False):
        field, within = _place(e["loc"])
        field = (said or {}).get(field, field)
        where, type_ = place + within, e["type"]
        if type_ == "missing":
            out.append(f"{where}: {field} is missing; write it")
        elif type_ == "extra_forbidden" and within:
            out.append(f"{where}: {field} is not known there; leave it out")
        elif type_.startswith("union_tag"):
            words = e.get("ctx", {}).get("expected_tags", "")
            tag = e.get("ctx", {}).get("tag", "")
            odd = f"there is no step {tag!r}" if tag else "say what to do"
            out.append(f"{where}: {odd}; write do = one of {words}")
        elif type_ == "extra_forbidden":
            fields = [
                f.alias or n for n, f in model.model_fields.items() if n != "kind"
            ]
            hint = did_you_mean(field, fields) or (
                "it has " + (", ".join(fields) or "no settings")
            )
            out.append(f"{where}: {field} is not one of its settings; {hint}")
        elif type_ == "enum":
            words = e.get("ctx", {}).get("expected", "")
            out.append(f"{where}: {field} = {e['input']!r} is not known; write {words}")
        elif type_ == "value_error":
            out.append(f"{where}: {field}: {e['ctx']['error']}")
        elif type_ == "string_type":
            out.append(f"{where}: {field} is a word or words, in quotes")
        elif type_.startswith("bool"):
            out.append(f"{where}: {field} is true or false, without quotes")
        else:
            out.append(
                f"{where}: {field} = {e.get('input')!r} cannot be read; {e['msg']}"
            )
    return out


def _place(loc: tuple[int | str, ...]) -> tuple[str, str]:
    """The field at fault, and the step and the place of it in which it stands."""
    field = str(loc[-1]) if loc else ""
    if len(loc) < 2:
        return field, ""
    words = []
    for a, b in zip(loc, loc[1:], strict=False):
        if isinstance(b, int):
            words.append(f"{a} {b + 1}")
        elif isinstance(a, str) and a in ("from", "to", "about") and a != field:
            words.append(a)
    if isinstance(loc[-1], int):  # the step itself
        field = ""
    return field, "".join(f", {w}" for w in words)
