using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace CalibGeom.Cli.Tests;

/// <summary>
/// Plays the session of docs/worked-session-tune.md and requires the page and its pictures to show what came out.
/// </summary>
public partial class WorkedSessionTuneTests
{
    [Fact]
    public void ThePageShowsWhatTheCommandsSay()
    {
        using var folder = new TemporaryFolder();
        var page = new StringBuilder();
        page.Append(
            """
            # A session with tune

            The demo workshop makes fixtures for watch repair and has a bottle of a new resin called "Demo grey". Its printer is played by
            `calibgeom simulate` (Dp 0.12 mm, Ec 4 mJ/cm2, 4 mW/cm2, a blur of 0.02 mm), so that you can repeat every step; with a real printer you
            print, wash, dry and measure instead. Every number below is recomputed by a test. Wear gloves and eye protection, and read the
            resin's safety data sheet.


            """.Replace("\r", "", StringComparison.Ordinal)
        );
        (double time, double rest, double offset) = (2.5, 0.5, 0);
        bool asked = true;
        for (int print = 1; print <= 8 && asked; print++)
        {
            page.Append(CultureInfo.InvariantCulture, $"## Print {print}\n\n```sh\n");
            Command(
                page,
                folder,
                $"simulate --dp 0.12 --ec 4 --irradiance 4 --blur 0.02 --time {time} --rest "
                    + $"{rest}{Offset(offset)} --seed {print} --repeats 3 -o print{print}.csv"
            );
            Command(
                page,
                folder,
                $"log add print{print}.csv --to demo-grey.jsonl --time {time} --rest {rest} --edge-offset {offset}"
                    + (print == 1 ? " --printer bench --resin grey" : "")
            );
            CliRun tune = Command(page, folder, $"tune demo-grey.jsonl --target 0.05");
            page.Append("```\n\n").Append("```text\n").Append(tune.Out.TrimEnd()).Append("\n```\n\n");
            (asked, time, rest, offset) = Next(tune.Out);
        }

        page.Append("## What it looks like\n\n```sh\n");
        Command(
            page,
            folder,
            $"tune demo-grey.jsonl --target 0.05 --plot tune-exposure.svg --column-plot tune-columns.svg"
        );
        page.Append("```\n\n");
        page.Append(
            """
            Lines are clearances to expect, the green one holds the target with the recommended edge offset, and its band is one standard uncertainty wide on each side. Bars on trials are one standard uncertainty of a print.

            ![Clearance over rest and exposure](pictures/tune-exposure.svg)

            ![Survival of columns](pictures/tune-columns.svg)

            """.Replace("\r", "", StringComparison.Ordinal)
        );
        foreach (string picture in new[] { "tune-exposure.svg", "tune-columns.svg" })
            RepositoryFile.RequireHolds($"docs/pictures/{picture}", File.ReadAllBytes(folder[picture]));
        RepositoryFile.RequireHolds("docs/worked-session-tune.md", Encoding.UTF8.GetBytes(page.ToString()));
    }

    /// <summary>What the first line orders: whether to print, and with which settings.</summary>
    private static (bool Asked, double Time, double Pause, double Offset) Next(string answer)
    {
        Match order = Order().Match(answer);
        Assert.True(order.Success, answer);
        return (order.Groups[1].Value != "Stop", Number(2), Number(3), Number(4));

        double Number(int group) =>
            order.Groups[group].Success ? double.Parse(order.Groups[group].Value, CultureInfo.InvariantCulture) : 0;
    }

    [GeneratedRegex(
        @"^(Print next|Print once more|Stop)\D+([\d.]+) s exposure, ([\d.]+) s rest, (?:no edge offset|edge offset ([+-][\d.]+) mm)"
    )]
    private static partial Regex Order();

    private static string Offset(double offset) =>
        offset == 0 ? "" : FormattableString.Invariant($" --edge-offset {offset}");

    private static CliRun Command(StringBuilder page, TemporaryFolder folder, string text)
    {
        page.Append("calibgeom ").Append(text).Append('\n');
        string[] words = text.Split(' ')
            .Select(w =>
                w.Contains(".csv", StringComparison.Ordinal)
                || w.EndsWith(".jsonl", StringComparison.Ordinal)
                || w.EndsWith(".svg", StringComparison.Ordinal)
                    ? folder[w]
                    : w
            )
            .ToArray();
        CliRun run = CliRun.Of(words);
        Assert.Equal(0, run.ExitCode);
        return run;
    }
}
