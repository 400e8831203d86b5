namespace CalibGeom.Cli.Shared;

/// <summary>What must be said wherever output leads to a print.</summary>
internal static class Caution
{
    internal const string Text =
        "Caution: uncured resin sensitises skin and irritates eyes, wash solvents are flammable, UV light hurts eyes. "
        + "Wear nitrile gloves and eye protection, "
        + "air the room, follow the resin's safety data sheet and local rules for waste. Columns are sharp when "
        + "they break. A designed or predicted size "
        + "is an estimate: parts whose failure can hurt someone need inspection and a qualified person's judgement.";
}
