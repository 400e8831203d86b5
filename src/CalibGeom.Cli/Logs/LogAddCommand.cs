using System.CommandLine;
using CalibGeom.Cli.Shared;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Logs;

/// <summary><c>calibgeom log add</c>: one more print in the log.</summary>
internal static class LogAddCommand
{
    internal static Command Build(CommandIo io)
    {
        var readings = new Argument<string>("READINGS")
        {
            Description = "Readings of the print, CSV or JSON; - is standard input.",
        };
        var log = new Option<string>("--to")
        {
            Description = "The log to append to; made when it does not exist.",
            HelpName = "LOG",
            Required = true,
        };
        Option<string?> printed = LogAddOptions.Text(
            "--object",
            "FILE|PRESET",
            "What was printed. Default: the preset whose digest the readings name, else standard."
        );
        Option<string?> coupon = LogAddOptions.Text(
            "--coupon",
            "ID",
            "Only the readings of this coupon (A1 of A1/box1.outside.x)."
        );
        var again = new Option<bool>("--again")
        {
            Description = "The same readings once more: it was printed and measured again.",
        };
        var yes = new Option<bool>("--yes") { Description = "Unlikely settings and near-same names are meant." };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var said = new LogAddOptions();
        var command = new Command(
            "add",
            """
            Append one print to a log; nothing that stands in it is rewritten.

            What is not given is taken from the object's process, then from the last print of the log, and that is said.

            Example:
              calibgeom log add bench.csv --to demo-grey.jsonl --time 2.5 --rest 1 --resin "Demo grey" --printer bench
            """
        );
        command.Arguments.Add(readings);
        foreach (Option option in new Option[] { log, printed, coupon, again, yes, json }.Concat(said.All))
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            ReadingSet set = Coupon(FeatureSource.Readings(io, [parsed.GetValue(readings)!]), parsed.GetValue(coupon));
            return new LogAddRun(io, set, Printed(io, set, parsed.GetValue(printed)))
            {
                Path = parsed.GetValue(log)!,
                Said = said.Read(parsed, DateOnly.FromDateTime(io.Clock.GetLocalNow().DateTime)),
                Again = parsed.GetValue(again),
                Yes = parsed.GetValue(yes),
                Json = parsed.GetValue(json),
            }.Run();
        });
        return command;
    }

    private static TestObject Printed(CommandIo io, ReadingSet readings, string? printed)
    {
        Preset? named =
            printed is null && readings.Digest is { } digest
                ? Presets.All.FirstOrDefault(p => SpecDigest.Of(p.Spec) == digest)
                : Presets.Find(printed ?? "");
        return TestObjectBuilder.Build(SpecSource.Load(io, named is null ? printed : null, named?.Name, []).Spec);
    }

    private static ReadingSet Coupon(ReadingSet readings, string? coupon)
    {
        if (coupon is null)
            return readings;
        return readings.Coupons.Contains(coupon)
            ? readings.ForCoupon(coupon)
            : throw new InputException(
                $"There are no readings of coupon {coupon}. The readings hold "
                    + string.Join(", ", readings.Coupons.Select(c => c.Length > 0 ? c : "readings without a coupon"))
                    + "."
            );
    }
}
