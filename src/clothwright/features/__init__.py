"""Style features. One file each; `KINDS` is where a feature is registered."""

from collections.abc import Iterator, Mapping
from importlib import import_module
from typing import Any

from clothwright.features.base import Feature, Number, Rank, Stage


class _Kinds(Mapping[str, type[Feature]]):
    """Features by the word that an order names. The file of one is read when it is
    first asked for: to read all takes as long as five drafts."""

    def __init__(self, places: Mapping[str, str]) -> None:
        self._places = places

    def __getitem__(self, kind: str) -> type[Feature]:
        file, name = self._places[kind].split(".")
        found: type[Feature] = getattr(import_module(f"{__name__}.{file}"), name)
        return found

    def __contains__(self, kind: object) -> bool:
        return kind in self._places

    def __iter__(self) -> Iterator[str]:
        return iter(self._places)

    def __len__(self) -> int:
        return len(self._places)


KINDS: Mapping[str, type[Feature]] = _Kinds(
    {
        "bodice block": "block.Block",
        "fitting": "fitting.Fitting",
        "sleeveless armhole": "armhole.SleevelessArmhole",
        "sleeved armhole": "sleeved_armhole.SleevedArmhole",
        "drop shoulder": "drop_shoulder.DropShoulder",
        "extended shoulder": "extended_shoulder.ExtendedShoulder",
        "neckline": "necklines.Neckline",
        "wrap front": "wrap_front.WrapFront",
        "cowl": "cowl.Cowl",
        "halter": "halter.Halter",
        "back neckline": "necklines.BackNeckline",
        "funnel neck": "funnel.FunnelNeck",
        "back strap": "back_strap.BackStrap",
        "tightening": "shoulder.Tightening",
        "front armhole princess": "front_princess.FrontArmholePrincess",
        "back armhole princess": "back_princess.BackArmholePrincess",
        "shoulder princess": "shoulder_princess.ShoulderPrincess",
        "side dart": "side_dart.SideDart",
        "bust dart": "bust_dart.BustDart",
        "back waist dart": "side_dart.BackWaistDart",
        "front yoke": "yokes.FrontYoke",
        "back yoke": "yokes.BackYoke",
        "empire seam": "empire.EmpireSeam",
        "low open back": "open_back.LowOpenBack",
        "loops": "loops.Loops",
        "panel behind": "under_panel.UnderPanel",
        "concealed zip": "concealed_zip.ConcealedZip",
        "button stand": "button_stand.ButtonStand",
        "underarm zip": "underarm_zip.UnderarmZip",
        "neck placket": "neck_placket.NeckPlacket",
        "set-in sleeve": "set_in_sleeve.SetInSleeve",
        "kimono sleeve": "kimono.Kimono",
        "cap sleeve": "cap_sleeve.CapSleeve",
        "flutter sleeve": "flutter_sleeve.FlutterSleeve",
        "puffed cap": "puffed_cap.PuffedCap",
        "leg of mutton": "leg_of_mutton.LegOfMutton",
        "bell": "bell_sleeve.BellSleeve",
        "petals": "petal_sleeve.PetalSleeve",
        "two pieces": "two_piece_sleeve.TwoPieceSleeve",
        "raglan": "raglan.Raglan",
        "gathered hem": "gathered_hem.GatheredHem",
        "sleeve band": "sleeve_band.SleeveBand",
        "cuff": "cuff.Cuff",
        "waist seam": "waist.WaistSeam",
        "torso": "torso.Torso",
        "peplum": "peplum.Peplum",
        "dress skirt": "dress_skirt.DressSkirt",
        "straight dress skirt": "fitted_dress_skirt.FittedDressSkirt",
        "facing": "facing.Facing",
        "neck facing": "neck_facing.NeckFacing",
        "stand collar": "stand_collar.StandCollar",
        "shirt collar": "shirt_collar.ShirtCollar",
        "convertible collar": "convertible_collar.ConvertibleCollar",
        "flat collar": "flat_collar.FlatCollar",
        "sailor collar": "sailor_collar.SailorCollar",
        "bertha": "bertha.Bertha",
        "neck frill": "neck_frill.NeckFrill",
        "tie collar": "tie_collar.TieCollar",
        "shawl collar": "shawl_collar.ShawlCollar",
        "notched collar": "notched_collar.NotchedCollar",
        "lining": "lining.Lining",
        "underlining": "underlining.Underlining",
        "straight skirt": "straight_skirt.StraightSkirt",
        "circle skirt": "circle_skirt.CircleSkirt",
        "gored skirt": "gored_skirt.GoredSkirt",
        "gathered skirt": "gathered_skirt.GatheredSkirt",
        "pleated skirt": "pleated_skirt.PleatedSkirt",
        "centre pleat": "centre_pleat.CentrePleat",
        "vent": "vent.Vent",
        "hip yoke": "hip_yoke.HipYoke",
        "skirt zip": "skirt_zip.SkirtZip",
        "skirt pockets": "skirt_pockets.SkirtPockets",
        "set pocket": "set_pocket.SetPocket",
        "trousers": "trousers.Trousers",
        "front pleats": "pleats.Pleats",
        "fly": "fly.Fly",
        "side zip": "trouser_zip.SideZip",
        "trouser pockets": "trouser_pockets.Pockets",
        "turn-ups": "turn_ups.TurnUps",
        "knit bodice": "knit_bodice.KnitBodice",
        "knit sleeve": "knit_sleeve.KnitSleeve",
        "knit cuff": "knit_cuff.KnitCuff",
        "neck band": "neck_band.NeckBand",
        "armhole band": "armhole_band.ArmholeBand",
        "hem band": "hem_band.HemBand",
        "shorts": "shorts.Shorts",
        "waistband": "waistband.Waistband",
        "contour waistband": "contour_band.ContourBand",
        "waist facing": "waist_facing.WaistFacing",
        "elastic waist": "elastic_waist.ElasticWaist",
        "skirt lining": "skirt_lining.SkirtLining",
        "trouser lining": "trouser_lining.TrouserLining",
        "godets": "godets.Godets",
        "flounce": "flounce.Flounce",
        "by hand": "by_hand.ByHand",
    }
)
"""Every feature that an order may name, in the order in which they are told: its kind,
its file and its class."""

FORMER: dict[str, str] = {"short sleeve": "set-in sleeve"}
"""Former names of features, which older orders still use."""


def by_its_name(row: Mapping[str, Any]) -> dict[str, Any]:
    """What an order says of a feature, under the name that the feature has now."""
    kind = row.get("kind")
    now = FORMER.get(kind, kind) if isinstance(kind, str) else kind
    return {**row, "kind": now} if "kind" in row else dict(row)


__all__ = ["KINDS", "by_its_name", "Feature", "Number", "Rank", "Stage"]
