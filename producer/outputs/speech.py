"""What was said, as captions for the finished video: speech.srt and speech.vtt. Only where there is a cut or a take.

The words are those of the cut's captions, until there is one of the take's; broken anew by sense, inside the channel's
reading profile, with numbers as figures.
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.captions.profile import reading_profile
from producer.captions.speech import speech_captions
from producer.captions.srt import to_srt
from producer.captions.vtt import to_vtt
from producer.model.cue import Cue
from producer.model.dossier import Dossier
from producer.outputs.captions import times_from
from producer.render.document import Document
from producer.render.kit import Kit
from producer.take.written_figures import Known, with_figures


def documents(dossier: Dossier, kit: Kit) -> Iterator[Document]:  # noqa: ARG001 - every output is called alike
    """The spoken captions in two formats; nothing without a take of this episode."""
    cues = spoken(dossier)
    if cues:
        yield Document.of_text("speech.srt", to_srt(cues))
        yield Document.of_text("speech.vtt", to_vtt(cues, note=times_from(dossier)))


def spoken(dossier: Dossier) -> tuple[Cue, ...]:
    """The captions of what was said, () without a take of this episode."""
    take = dossier.take
    if take is None or take.stranger:
        return ()
    said = with_figures(take.said, take.figures, Known.of(dossier.sheets, dossier.garage))
    return speech_captions(said, reading_profile(dossier.channel.captions))
