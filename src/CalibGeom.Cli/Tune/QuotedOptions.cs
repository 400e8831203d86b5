using System.CommandLine;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Cli.Tune;

/// <summary>The working curve of a data sheet on the command line: all three numbers, or none.</summary>
internal sealed class QuotedOptions
{
    internal Option<double?> Depth { get; } = Number("--dp", "Dp of the resin from its data sheet, mm", "MM");

    internal Option<double?> Dose { get; } = Number("--ec", "Ec of the resin from its data sheet, mJ/cm2", "DOSE");

    internal Option<double?> Irradiance { get; } =
        Number("--irradiance", "Irradiance of the printer at the film, mW/cm2", "MW");

    /// <exception cref="InputException">Some of the three are missing.</exception>
    internal QuotedLight? Read(ParseResult parsed) =>
        (parsed.GetValue(Depth), parsed.GetValue(Dose), parsed.GetValue(Irradiance)) switch
        {
            (null, null, null) => null,
            ({ } depth, { } dose, { } irradiance) => new QuotedLight(depth, dose, irradiance),
            _ => throw new InputException(
                InputIds.Option,
                "A working curve is three numbers: give --dp, --ec and --irradiance, or none of them."
            ),
        };

    private static Option<double?> Number(string name, string what, string unit) =>
        new(name) { Description = $"{what}; a start only, laboratories differ by several times.", HelpName = unit };
}
