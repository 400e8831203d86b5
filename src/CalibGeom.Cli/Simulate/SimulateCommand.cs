using System.CommandLine;
using CalibGeom.Cli.Shared;
using CalibGeom.Light;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Cli.Simulate;

/// <summary><c>calibgeom simulate</c>: readings of a print that never was.</summary>
internal static class SimulateCommand
{
    // Apart from the numbers that readings are drawn from.
    private const ulong PrintStream = 0x5EED_0FAB_1A5E;

    internal static Command Build(CommandIo io)
    {
        var printed = new ObjectOption("the preset standard");
        var dp = Number("--dp", "Penetration depth of the resin, mm.", "MM");
        var ec = Number("--ec", "Critical dose of the resin, mJ/cm2.", "DOSE");
        var irradiance = Number("--irradiance", "Irradiance at the film, mW/cm2.", "MW");
        var time = Number("--time", "Exposure of a layer, s.", "S");
        var rest = new Option<double>("--rest")
        {
            Description = "Rest before each exposure, s. Default 0.",
            HelpName = "S",
        };
        var blur = new Option<double>("--blur")
        {
            Description = "How far light spreads: sigma (Gaussian) or half width (Lorentz), mm. Default 0.02.",
            HelpName = "MM",
            DefaultValueFactory = _ => 0.02,
        };
        var kernel = new Option<string>("--kernel")
        {
            Description = "gaussian (default) or lorentz.",
            HelpName = "NAME",
            DefaultValueFactory = _ => "gaussian",
        };
        var layer = new Option<double?>("--layer")
        {
            Description = "Layer height, mm; default: the spec's, else 0.05.",
            HelpName = "MM",
        };
        var scale = new Option<double>("--scale")
        {
            Description = "Proportional change of all sizes; -0.003 = 0.3 % too small. Default 0.",
            HelpName = "S",
        };
        var offset = new Option<double>("--edge-offset")
        {
            Description = "Edge offset entered in the slicer, mm. Default 0.",
            HelpName = "MM",
        };
        var restEffect = Default(
            "--rest-effect",
            "How far an edge draws back after a long rest, mm.",
            "MM",
            ExposurePriors.Default.RestEffect.Median
        );
        var restTime = Default(
            "--rest-time",
            "How long that takes: 63 % of it after this rest, s.",
            "S",
            ExposurePriors.Default.RestTime.Median
        );
        var columnLimit = Default(
            "--column-limit",
            "Diameter of which half print at 3 times the critical dose, mm.",
            "MM",
            new SurvivalLaw().Limit
        );
        var squeeze = Default(
            "--squeeze",
            "Height lost next to the plate without rest, mm; rest lets it flow out: times exp(-rest / rest-time).",
            "MM",
            0
        );
        var baseLayers = new Option<int?>("--base-layers")
        {
            Description = $"Number of base layers; default: the spec's, else {ProcessDefaults.BaseLayers}.",
            HelpName = "N",
        };
        var baseTime = new Option<double?>("--base-time")
        {
            Description = FormattableString.Invariant(
                $"Exposure of a base layer, s; default: the spec's, else {ProcessDefaults.BaseTime}."
            ),
            HelpName = "S",
        };
        var pixel = new Option<string?>("--pixel")
        {
            Description =
                "Pixel pitch, mm, or one for X and one for Y, 0.005 to 0.5: light every layer's pixels instead of "
                + "computing faces in closed form.",
            HelpName = PixelText.Help,
        };
        var grey = new Option<bool>("--grey")
        {
            Description =
                "With --pixel: light pixels in proportion to their coverage instead of from half coverage on.",
        };
        var seed = new Option<ulong?>("--seed")
        {
            Description = "Add a caliper's errors and rounding to 0.01 mm, and lose columns by chance.",
            HelpName = "N",
        };
        var caliperSeed = new Option<ulong>("--caliper-seed")
        {
            Description = "With --seed: whose caliper and hands, the same for all prints of one session. Default 1.",
            HelpName = "N",
            DefaultValueFactory = _ => 1,
        };
        var between = Default(
            "--between-prints",
            "With --seed: standard deviation of growth between prints, mm.",
            "MM",
            ExposurePriors.Default.BetweenPrints.Median
        );
        var repeats = new Option<int>("--repeats")
        {
            Description = "How often each size is read, 1 to 20. Default 1.",
            HelpName = "N",
            DefaultValueFactory = _ => 1,
        };
        var output = new Option<string>("--output", "-o")
        {
            Description = "Where to write the readings; - (default) is standard output.",
            HelpName = "FILE",
            DefaultValueFactory = _ => "-",
        };
        var plot = new Option<string?>("--plot")
        {
            Description = "With --pixel: draw lit pixels and solid resin close up (.svg or .png).",
            HelpName = "FILE",
        };
        var json = new Option<bool>("--json")
        {
            Description = "Print one JSON envelope; readings as CSV are written only with -o FILE.",
        };
        var command = new Command(
            "simulate",
            """
            Predict from light what a print would measure, and write it as readings that predict and log add read.

            Rest draws edges back by rest-effect (1 - exp(-rest / rest-time)); the defaults are the middle of what tune believes. Base layers and
            squeeze decide squeeze.open. With --pixel sizes come from the masks of all layers, with what pixels and layer heights do to them. Rest, squeeze and the fate of columns follow laws of ours without a source.

            Example:
              calibgeom simulate --dp 0.12 --ec 4 --irradiance 4 --time 2.5 --rest 1 --blur 0.02 --seed 7 -o readings.csv
            """
        );
        printed.AddTo(command);
        foreach (
            Option option in new Option[]
            {
                dp,
                ec,
                irradiance,
                time,
                rest,
                blur,
                kernel,
                layer,
                scale,
                offset,
                restEffect,
                restTime,
                columnLimit,
                squeeze,
                baseLayers,
                baseTime,
                pixel,
                grey,
                seed,
                caliperSeed,
                between,
                repeats,
                output,
                plot,
                json,
            }
        )
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            TestObject made = TestObject.Of(printed.Spec(io, parsed, "standard").Spec);
            if (made.HasErrors)
                throw new InputException(
                    InputIds.Spec,
                    "This design cannot be made: " + made.Findings.First(f => f.Severity == Severity.Error).Message
                );
            try
            {
                ProcessSpec process = made.Spec.Process ?? new ProcessSpec();
                var light = new LayerLight(
                    new WorkingCurve(parsed.GetValue(dp), parsed.GetValue(ec)),
                    parsed.GetValue(irradiance),
                    parsed.GetValue(time),
                    parsed.GetValue(layer) ?? process.LayerHeight,
                    parsed.GetValue(baseLayers) ?? process.BaseLayers,
                    parsed.GetValue(baseTime) ?? process.BaseTime
                );
                var settings = new ExposureSettings(parsed.GetValue(time), parsed.GetValue(rest));
                int often = parsed.GetValue(repeats);
                if (often is < 1 or > 20)
                    throw new InputException(InputIds.Option, $"--repeats must be 1 to 20, not {often}.");
                return SimulateRun.Run(
                    io,
                    new SimulateRequest(made, Kernel(parsed.GetValue(kernel)!, parsed.GetValue(blur)), light)
                    {
                        Retreat =
                            new RestLaw(parsed.GetValue(restEffect), parsed.GetValue(restTime)).Retreat(settings.Rest)
                            - ThisPrint(parsed.GetValue(seed), parsed.GetValue(between)),
                        Scale = parsed.GetValue(scale),
                        EdgeOffset = parsed.GetValue(offset),
                        ColumnLimit = parsed.GetValue(columnLimit),
                        Squeeze = parsed.GetValue(squeeze) * Math.Exp(-settings.Rest / parsed.GetValue(restTime)),
                        Pixel = parsed.GetValue(pixel) is { } pitch ? PixelText.Parse(pitch, 0.005, 0.5) : null,
                        Grey = parsed.GetValue(grey),
                        Seed = parsed.GetValue(seed),
                        CaliperSeed = parsed.GetValue(caliperSeed),
                        Repeats = often,
                        Output = parsed.GetValue(output)!,
                        Plot = parsed.GetValue(plot),
                        Json = parsed.GetValue(json),
                    }
                );
            }
            catch (ArgumentException e)
            {
                throw InputException.Because(InputIds.Option, e);
            }
        });
        return command;
    }

    // How much this print grows more than the mean of prints; none without a seed.
    private static double ThisPrint(ulong? seed, double deviation) =>
        seed is { } s
            ? Require.Within(deviation, 0, 0.1, "deviation between prints", "mm", nameof(deviation))
                * new SeededRandom(s ^ PrintStream).Normal()
            : 0;

    private static Option<double> Number(string name, string description, string unit) =>
        new(name)
        {
            Description = description,
            HelpName = unit,
            Required = true,
        };

    private static Option<double> Default(string name, string description, string unit, double value) =>
        new(name)
        {
            Description = FormattableString.Invariant($"{description} Default {value}."),
            HelpName = unit,
            DefaultValueFactory = _ => value,
        };

    private static EdgeBlur Kernel(string name, double width) =>
        name switch
        {
            "gaussian" => new GaussianBlur(width),
            "lorentz" => new LorentzBlur(width),
            _ => throw new InputException(InputIds.Option, $"There is no kernel \"{name}\". Use gaussian or lorentz."),
        };
}
