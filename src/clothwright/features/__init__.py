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
        file, name = self._places[kind].rsplit(".", 1)
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
        "sleeveless armhole": "bodice.armhole.SleevelessArmhole",
        "racer back": "bodice.racer_back.RacerBack",
        "sleeved armhole": "bodice.sleeved_armhole.SleevedArmhole",
        "drop shoulder": "bodice.drop_shoulder.DropShoulder",
        "extended shoulder": "bodice.extended_shoulder.ExtendedShoulder",
        "neckline": "necks.necklines.Neckline",
        "wrap front": "necks.wrap_front.WrapFront",
        "cowl": "necks.cowl.Cowl",
        "halter": "necks.halter.Halter",
        "strapless": "bodice.strapless.Strapless",
        "straps": "necks.straps.Straps",
        "back neckline": "necks.necklines.BackNeckline",
        "funnel neck": "necks.funnel.FunnelNeck",
        "back strap": "necks.back_strap.BackStrap",
        "back neck slit": "openings.back_slit.BackNeckSlit",
        "cut-out back": "openings.cut_out_back.CutOutBack",
        "bound cut-out": "openings.bound_cut_out.BoundCutOut",
        "tightening": "bodice.shoulder.Tightening",
        "front armhole princess": "bodice.front_princess.FrontArmholePrincess",
        "back armhole princess": "bodice.back_princess.BackArmholePrincess",
        "shoulder princess": "bodice.shoulder_princess.ShoulderPrincess",
        "side dart": "bodice.side_dart.SideDart",
        "bust dart": "bodice.bust_dart.BustDart",
        "tent": "bodice.tent.Tent",
        "back waist dart": "bodice.back_waist_dart.BackWaistDart",
        "front yoke": "bodice.yokes.FrontYoke",
        "back yoke": "bodice.yokes.BackYoke",
        "front tucks": "bodice.front_tucks.FrontTucks",
        "under-bust contour": "bodice.under_bust.UnderBust",
        "empire seam": "bodice.empire.EmpireSeam",
        "low open back": "openings.open_back.LowOpenBack",
        "loops": "openings.loops.Loops",
        "panel behind": "openings.under_panel.UnderPanel",
        "concealed zip": "openings.concealed_zip.ConcealedZip",
        "button stand": "openings.button_stand.ButtonStand",
        "fasteners": "openings.fasteners.Fasteners",
        "centre loops": "openings.centre_loops.CentreLoops",
        "lacing": "openings.lacing.Lacing",
        "open zip": "openings.open_zip.OpenZip",
        "underarm zip": "openings.underarm_zip.UnderarmZip",
        "neck placket": "openings.neck_placket.NeckPlacket",
        "set-in sleeve": "sleeves.set_in_sleeve.SetInSleeve",
        "kimono sleeve": "sleeves.kimono.Kimono",
        "cap sleeve": "sleeves.cap_sleeve.CapSleeve",
        "flutter sleeve": "sleeves.flutter_sleeve.FlutterSleeve",
        "puffed cap": "sleeves.puffed_cap.PuffedCap",
        "leg of mutton": "sleeves.leg_of_mutton.LegOfMutton",
        "bell": "sleeves.bell_sleeve.BellSleeve",
        "petals": "sleeves.petal_sleeve.PetalSleeve",
        "two pieces": "sleeves.two_piece_sleeve.TwoPieceSleeve",
        "raglan": "sleeves.raglan.Raglan",
        "gathered hem": "sleeves.gathered_hem.GatheredHem",
        "sleeve band": "sleeves.sleeve_band.SleeveBand",
        "cuff": "sleeves.cuff.Cuff",
        "sleeve tucks": "sleeves.sleeve_tucks.SleeveTucks",
        "waist seam": "bodice.waist.WaistSeam",
        "torso": "bodice.torso.Torso",
        "peplum": "skirts.peplum.Peplum",
        "dress skirt": "skirts.dress_skirt.DressSkirt",
        "straight dress skirt": "skirts.fitted_dress_skirt.FittedDressSkirt",
        "gored dress skirt": "skirts.gored_dress_skirt.GoredDressSkirt",
        "pleated dress skirt": "skirts.pleated_dress_skirt.PleatedDressSkirt",
        "facing": "linings.facing.Facing",
        "neck facing": "linings.neck_facing.NeckFacing",
        "neck binding": "linings.neck_binding.NeckBinding",
        "armhole binding": "linings.armhole_binding.ArmholeBinding",
        "stand collar": "collars.stand_collar.StandCollar",
        "shirt collar": "collars.shirt_collar.ShirtCollar",
        "convertible collar": "collars.convertible_collar.ConvertibleCollar",
        "flat collar": "collars.flat_collar.FlatCollar",
        "sailor collar": "collars.sailor_collar.SailorCollar",
        "bertha": "collars.bertha.Bertha",
        "capelet": "collars.capelet.Capelet",
        "neck frill": "collars.neck_frill.NeckFrill",
        "jabot": "collars.jabot.Jabot",
        "tie collar": "collars.tie_collar.TieCollar",
        "shawl collar": "collars.shawl_collar.ShawlCollar",
        "notched collar": "collars.notched_collar.NotchedCollar",
        "lining": "linings.lining.Lining",
        "ease pleat": "linings.ease_pleat.EasePleat",
        "jump pleat": "linings.jump_pleat.JumpPleat",
        "underlining": "linings.underlining.Underlining",
        "straight skirt": "skirts.straight_skirt.StraightSkirt",
        "circle skirt": "skirts.circle_skirt.CircleSkirt",
        "gored skirt": "skirts.gored_skirt.GoredSkirt",
        "a-line": "skirts.a_line.ALine",
        "gathered skirt": "skirts.gathered_skirt.GatheredSkirt",
        "pleated skirt": "skirts.pleated_skirt.PleatedSkirt",
        "sunburst skirt": "skirts.sunburst_skirt.SunburstSkirt",
        "centre pleat": "skirts.centre_pleat.CentrePleat",
        "vent": "skirts.vent.Vent",
        "side slit": "skirts.side_slit.SideSlit",
        "hip yoke": "skirts.hip_yoke.HipYoke",
        "skirt zip": "skirts.skirt_zip.SkirtZip",
        "skirt pockets": "skirts.skirt_pockets.SkirtPockets",
        "set pocket": "pockets.set_pocket.SetPocket",
        "tier pocket": "pockets.tier_pocket.TierPocket",
        "panel pocket": "pockets.panel_pocket.PanelPocket",
        "panel seam pockets": "pockets.panel_seam_pockets.PanelSeamPockets",
        "top pocket": "pockets.top_pocket.TopPocket",
        "breast pocket": "pockets.breast_pocket.BreastPocket",
        "trousers": "trousers.trousers.Trousers",
        "front pleats": "trousers.pleats.Pleats",
        "fly": "trousers.fly.Fly",
        "side zip": "trousers.trouser_zip.SideZip",
        "trouser pockets": "trousers.trouser_pockets.Pockets",
        "front pocket": "pockets.front_pocket.FrontPocket",
        "back pocket": "pockets.back_pocket.BackPocket",
        "trouser elastic": "trousers.trouser_elastic.TrouserElastic",
        "turn-ups": "trousers.turn_ups.TurnUps",
        "knit bodice": "knits.knit_bodice.KnitBodice",
        "knit sleeve": "knits.knit_sleeve.KnitSleeve",
        "knit cuff": "knits.knit_cuff.KnitCuff",
        "neck band": "knits.neck_band.NeckBand",
        "armhole band": "knits.armhole_band.ArmholeBand",
        "hem band": "knits.hem_band.HemBand",
        "knit pocket": "knits.knit_pocket.KnitPocket",
        "knit side pockets": "knits.knit_side_pockets.KnitSidePockets",
        "knit skirt": "knits.knit_skirt.KnitSkirt",
        "shorts": "trousers.shorts.Shorts",
        "waistband": "skirts.waistband.Waistband",
        "contour waistband": "skirts.contour_band.ContourBand",
        "waist facing": "skirts.waist_facing.WaistFacing",
        "elastic waist": "skirts.elastic_waist.ElasticWaist",
        "drawstring": "skirts.drawstring.Drawstring",
        "drawstring waist": "skirts.drawstring_waist.DrawstringWaist",
        "trouser drawstring": "trousers.trouser_drawstring.TrouserDrawstring",
        "wrap skirt": "skirts.wrap_skirt.WrapSkirt",
        "skirt lining": "skirts.skirt_lining.SkirtLining",
        "trouser lining": "trousers.trouser_lining.TrouserLining",
        "godets": "skirts.godets.Godets",
        "flounce": "skirts.flounce.Flounce",
        "hem facing": "skirts.hem_facing.HemFacing",
        "hem tucks": "skirts.hem_tucks.HemTucks",
        "by hand": "hand.by_hand.ByHand",
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
