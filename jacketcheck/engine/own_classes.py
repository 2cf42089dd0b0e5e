"""Each set of provisions counts the faying classes of its own codes, and no others.

Letters mean different things in different codes, and a weak class that one code asks for must not
change what another finds.
"""

from __future__ import annotations

from dataclasses import replace

from jacketcheck.host.host import Host
from jacketcheck.jacket.jacket import Jacket

__all__ = ["jacket_for"]


def jacket_for(jacket: Jacket, *, host: Host, provisions: str) -> Jacket:
    """The jacket as a set of provisions sees it.

    Parameters
    ----------
    jacket
        One design, or many at once, with the faying classes of every code that is asked for.
    host
        Where the set's codes come from.
    provisions
        Name of the set.

    Returns
    -------
    Jacket
        With the classes of the set's own codes; as it is where it has none of them, so that the
        set's limit states can say what is missing. The same for the same codes, so that analyses
        are done once.

    Raises
    ------
    InputError
        If the provisions are not known.
    """
    codes = host.faying_codes(provisions)
    own = tuple(one for one in jacket.bolts.faying_classes if one.code in codes)
    if not own or len(own) == len(jacket.bolts.faying_classes):
        return jacket
    key = ("jacket with the faying classes of", *(one.name for one in own))
    if key not in jacket.memo:
        jacket.memo[key] = replace(jacket, bolts=replace(jacket.bolts, faying_classes=own))
    seen: Jacket = jacket.memo[key]
    return seen
