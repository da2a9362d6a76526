"""`check --fix`: what is mended, what is left alone, and that nothing else in a file changes."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from producer.basics.errors import ProducerError
from producer.jobs import mend as job
from producer.jobs.check import check
from producer.jobs.mend import mend
from tests.conftest import Ran

EPISODE = "marrow-creek-grand-sedan"
OTHER = "gannet-bowl-grand-sedan"
Run = Callable[..., Ran]


def path_of(library: Path, episode: str = EPISODE) -> Path:
    return library / episode / "episode.yaml"


def spoil(library: Path, episode: str = EPISODE, before: str = "a coil of {{ spring.rf }} is") -> bytes:
    """A stale figure, and a mark that has to stay; the file as it will be once mended."""
    path = path_of(library, episode)
    good = path.read_bytes().replace(b"\n", b"\r\n") + b"\r\n#  the end\t\r\n"
    assert before.encode() in good
    stale = before.replace("{{ spring.rf }}", "850 pounds")
    path.write_bytes(good.replace(before.encode(), stale.encode()))
    return good.replace(before.encode(), before.replace("}}", "}} pounds").encode())


def test_a_figure_is_mended_and_every_other_byte_stays(library: Path) -> None:
    wanted = spoil(library)
    done = mend(library)
    assert [one.code for one in done.fixed] == ["number-differs"]
    assert path_of(library).read_bytes() == wanted
    assert "number-differs" not in {one.code for one in done.checked.findings}
    changed = [row for row in done.diff.splitlines() if row[:1] in "+-" and row[:3] not in ("+++", "---")]
    assert len(changed) == 2
    assert "{{ spring.rf }} pounds" in changed[1]


def test_what_is_mended_stays_mended(library: Path) -> None:
    spoil(library)
    mend(library)
    again = mend(library)
    assert (again.fixed, again.diff, again.refused) == ((), "", ())


def test_a_dry_run_writes_nothing(library: Path) -> None:
    spoil(library)
    before = path_of(library).read_bytes()
    done = mend(library, dry_run=True)
    assert path_of(library).read_bytes() == before
    assert "{{ spring.rf }} pounds" in done.diff
    assert done.checked.findings == check(library).findings


def test_other_episodes_are_left_alone(library: Path) -> None:
    spoil(library)
    before = path_of(library).read_bytes()
    assert mend(library, (OTHER,)).fixed == ()
    assert path_of(library).read_bytes() == before


def test_several_places_of_one_file(library: Path) -> None:
    wanted = spoil(library)
    path = path_of(library)
    stated = b"- for: front_weight\r\n        direction: "
    assert stated + b"raise" in wanted
    path.write_bytes(path.read_bytes().replace(stated + b"raise", stated + b"lower"))
    done = mend(library)
    assert [one.code for one in done.fixed] == ["direction-against-sign", "number-differs"]
    assert path.read_bytes() == wanted


def test_a_file_changed_meanwhile_is_not_written_over(library: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    spoil(library)
    path = path_of(library)
    put = job.put

    def slow(*arguments: object) -> None:
        put(*arguments)  # type: ignore[arg-type]
        path.write_bytes(path.read_bytes() + b"# typed meanwhile\n")

    monkeypatch.setattr(job, "put", slow)
    with pytest.raises(ProducerError, match="was changed while this ran"):
        mend(library)
    assert path.read_bytes().endswith(b"# typed meanwhile\n")
    assert b"850 pounds" in path.read_bytes()


def test_a_figure_over_the_end_of_a_line_is_left_to_the_author(library: Path) -> None:
    path = path_of(library)
    text = path.read_text(encoding="utf-8")
    row = next(one for one in text.splitlines() if "a coil of {{ spring.rf }} is" in one)
    indent = row[: len(row) - len(row.lstrip())]
    path.write_text(text.replace("{{ spring.rf }} is", f"eight\n{indent}fifty is"), encoding="utf-8", newline="\n")
    before = path.read_bytes()
    done = mend(library)
    assert done.fixed == ()
    assert len(done.refused) == 1
    assert "does not stand in one line" in done.refused[0]
    assert path.read_bytes() == before


def test_the_command_shows_the_diff_and_what_is_left(producer: Run, library: Path, tmp_path: Path) -> None:
    wanted = spoil(library)
    ran = producer("check", "-l", library, "-o", tmp_path / "out")
    assert ran.code == 1
    assert ran.out.rstrip().endswith("(1 fixable with 'producer check --fix')")
    ran = producer("check", "--fix", "--dry-run", "-l", library, "-o", tmp_path / "out")
    assert ran.code == 1
    assert "1 place in 1 file to mend; nothing was written" in ran.out
    ran = producer("check", "--fix", "-l", library, "-o", tmp_path / "out")
    assert ran.code == 0, ran.out
    assert f"+++ {EPISODE}/episode.yaml" in ran.out
    assert "1 place in 1 file mended" in ran.out
    assert path_of(library).read_bytes() == wanted
    ran = producer("check", "--fix", "-l", library, "-o", tmp_path / "out")
    assert ran.code == 0
    assert "nothing here is mended without you" in ran.out


def test_json_says_what_a_fix_would_put_where(producer: Run, library: Path, tmp_path: Path) -> None:
    import json

    spoil(library)
    found = json.loads(producer("check", "--json", "-l", library, "-o", tmp_path / "out").out)
    fixes = [one["fix"] for one in found["findings"] if one["code"] == "number-differs"]
    row = path_of(library).read_text(encoding="utf-8").splitlines()[fixes[0]["line"] - 1]
    assert row[fixes[0]["column"] - 1 :][: fixes[0]["width"]] == "850"
    assert (fixes[0]["new"], len(fixes)) == ("{{ spring.rf }}", 1)
    found = json.loads(producer("check", "--json", "--fix", "-l", library, "-o", tmp_path / "out").out)
    assert [one["code"] for one in found["mended"]] == ["number-differs"]
    assert "{{ spring.rf }} pounds" in found["diff"]
    assert found["refused"] == []
    assert "number-differs" not in {one["code"] for one in found["findings"]}


def test_a_dry_run_alone_makes_no_sense(producer: Run, library: Path) -> None:
    ran = producer("check", "--dry-run", "-l", library)
    assert ran.code == 2
    assert "goes with --fix" in ran.err
