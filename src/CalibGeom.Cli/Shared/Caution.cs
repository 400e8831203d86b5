namespace CalibGeom.Cli.Shared;

/// <summary>What must be said wherever output leads to a print; sheets and drawings carry it in full.</summary>
internal static class Caution
{
    /// <summary>The same for a person at a terminal, who reads it every time.</summary>
    internal const string Short =
        "Caution: nitrile gloves, eye protection, fresh air. Sizes are estimates; see README.";

    internal const string Text =
        "Caution: uncured resin sensitises, wash solvents are flammable, UV hurts eyes: nitrile gloves, eye protection, fresh "
        + "air, the resin's safety data sheet. Sizes are estimates; see README.";
}
