"""What outputs and replies render with: the only Jinja environments, and Typst for pictures and PDF."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from producer.basics.errors import ProducerError
from producer.basics.figures import NO_BREAK
from producer.basics.shipped import shipped
from producer.basics.spelling import spell
from producer.render import typesetting
from producer.render.charts.drawing import Drawing
from producer.render.literal import typst_literal
from producer.render.markdown import to_html, to_inline_html, to_plain

if TYPE_CHECKING:
    from jinja2 import Environment


class Kit:
    """Renders templates: a library's own folders first, in the order given, the shipped one always last.

    A template gets its record as `view` and nothing else. A name that the view does not hold is an error, never an
    empty place. Troubles with a template are ProducerError: the templates are files of the installation or the
    author's own.
    """

    def __init__(self, template_folders: Sequence[Path] = ()) -> None:
        self._folders = tuple(dict.fromkeys((*template_folders, shipped("templates"))))

    def text(self, template: str, view: object) -> str:
        """Plain text or Markdown: nothing is escaped; the filter `plain` turns Markdown into plain text."""
        return self._render(lambda: self._text, template, view)

    def html(self, template: str, view: object) -> str:
        """HTML: every value is escaped; the filters `markdown` and `inline_markdown` render the author's Markdown."""
        return self._render(lambda: self._html, template, view)

    def typst(self, template: str, view: object) -> str:
        """Typst: every value becomes a Typst literal (text in quotes, records as dictionaries)."""
        return self._render(lambda: self._typst, template, view)

    def svg(self, drawing: Drawing) -> str:
        """A chart as a file of its own, in the colours of light paper; Typst sets it like any picture."""
        return self.html("chart.svg.j2", drawing)

    def pdf(self, source: str) -> bytes:
        """A tagged PDF/UA-1 of a Typst source; it refuses a letter that the font does not have."""
        return typesetting.pdf(source, self._fonts)

    def png(self, source: str) -> bytes:
        """One page as PNG, one pixel a point (a page of 1080 pt is 1080 pixels wide)."""
        return typesetting.png(source, self._fonts)

    @cached_property
    def _fonts(self) -> Any:
        return typesetting.fonts()

    @cached_property
    def _text(self) -> Environment:
        return _environment(self._folders, {"plain": to_plain})

    @cached_property
    def _html(self) -> Environment:
        from markupsafe import Markup

        marked = {
            # Both come from our Markdown renderer, which lets no HTML of the author through.
            "markdown": lambda text: Markup(to_html(text)),  # noqa: S704
            "inline_markdown": lambda text: Markup(to_inline_html(text)),  # noqa: S704
        }
        return _environment(self._folders, marked, autoescape=True)

    @cached_property
    def _typst(self) -> Environment:
        from jinja2 import Undefined

        def finalize(value: object) -> str:
            # Writing an undefined name raises its own error; it must not become a literal.
            return str(value) if isinstance(value, Undefined) else typst_literal(value)

        return _environment(self._folders, {}, finalize=finalize)

    def _render(self, environment: Callable[[], Environment], name: str, view: object) -> str:
        from jinja2 import TemplateError

        try:
            return environment().get_template(name).render(view=view)
        except TemplateError as error:
            raise ProducerError(_sentence(name, error)) from error
        except (TypeError, ValueError, ArithmeticError, LookupError) as error:
            raise ProducerError(f"the template '{name}' cannot be filled: {error}") from error


def _environment(
    folders: Sequence[Path],
    filters: dict[str, Callable[..., Any]],
    *,
    autoescape: bool = False,
    finalize: Callable[[object], str] | None = None,
) -> Environment:
    from jinja2 import ChoiceLoader, FileSystemLoader, StrictUndefined
    from jinja2.sandbox import ImmutableSandboxedEnvironment

    environment = ImmutableSandboxedEnvironment(
        loader=ChoiceLoader([FileSystemLoader(str(folder), encoding="utf-8") for folder in folders]),
        undefined=StrictUndefined,
        autoescape=autoescape,
        finalize=finalize,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        auto_reload=False,
    )
    environment.filters.update({"spell": spell, "nb": no_break, **filters})
    return environment


def no_break(text: str) -> str:
    """The text on one line: its spaces do not break."""
    return text.replace(" ", NO_BREAK)


def _sentence(name: str, error: Any) -> str:
    from jinja2 import TemplateNotFound

    if isinstance(error, TemplateNotFound):
        return f"there is no template '{error.name}'"
    where = f", line {error.lineno}" if getattr(error, "lineno", None) else ""
    return f"the template '{getattr(error, 'name', None) or name}'{where} cannot be used: {error.message}"
