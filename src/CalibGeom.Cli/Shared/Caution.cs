namespace CalibGeom.Cli.Shared;

/// <summary>What must be said wherever output leads to a print; sheets and drawings carry it in full.</summary>
internal static class Caution
{
    /// <summary>For a person at a terminal, who reads it every time: all that is to be done, without the why.</summary>
    internal const string Short =
        "Caution: nitrile gloves, eye protection, fresh air, safety data sheet, local rules for waste; sizes are estimates.";

    internal const string Text =
        "Caution: uncured resin sensitises, wash solvents are flammable, UV hurts eyes: nitrile gloves, eye protection, fresh "
        + "air, the resin's safety data sheet, local rules for waste. Sizes are estimates; see README.";
}
