using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Plates;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Place;

/// <summary>The values of <c>place</c>'s options, read in the invariant culture and checked.</summary>
internal static class PlaceValues
{
    /// <exception cref="InputException">A value is no number, out of range, or no plate is known.</exception>
    internal static Plate Plate(PlaceRequest request, ProcessSpec? process)
    {
        double[] size =
            request.Plate is { } text ? PlateText.Parse(text)
            : process is { } known ? [known.Plate.X, known.Plate.Y, known.Plate.Z]
            : throw new InputException(
                InputIds.Option,
                "The plate's size is not known. Give it, such as --plate 150x90."
            );
        double margin = request.Margin is { } m ? Number("--margin", m, 0, 500) : 0;
        if (margin >= Math.Min(size[0], size[1]) / 2)
            throw new InputException(
                InputIds.Option,
                $"--margin {request.Margin}: it leaves nothing of the plate. Make it less than half of the "
                    + $"shorter side."
            );
        var plate = new Plate(size[0], size[1], size.Length == 3 ? size[2] : null, margin);
        return Choice("--origin", request.Origin, "centre", "corner") == "corner" ? plate.WithCornerOrigin() : plate;
    }

    /// <exception cref="InputException">A value is no number or out of range.</exception>
    internal static PlacementRules Rules(PlaceRequest request, ProcessSpec? process) =>
        new()
        {
            Gap = request.Gap is { } gap ? Number("--gap", gap, 0.1, 100) : 2,
            Under = request.Under,
            StandAtZero = Choice("--base", request.Base, "parts", "zero") == "zero",
            MayTurn = process is null || process.PixelPitch.IsUniform,
            PixelPitch = request.PixelPitch is { } pitch ? PixelText.Parse(pitch, 0.001, 1) : process?.PixelPitch,
        };

    /// <exception cref="InputException">Not a known wish.</exception>
    internal static PlacementWish Wish(PlaceRequest request)
    {
        if (request.At == "near")
            return PlacementWish.NearParts;
        if (request.At == "corner")
            return PlacementWish.Corner;
        string[] point = request.At.Split(',');
        return point.Length == 2
            ? PlacementWish.Near(Number("--at", point[0], -10000, 10000), Number("--at", point[1], -10000, 10000))
            : throw new InputException(
                InputIds.Option,
                $"--at {request.At}: give near, corner, map, or a point such as 30,-20.5."
            );
    }

    /// <exception cref="InputException">Not a whole number from 1 to 50, or given without a map.</exception>
    internal static int Count(PlaceRequest request)
    {
        if (request.Count is not { } text)
            return request.IsMap ? 5 : 1;
        if (!request.IsMap)
            throw new InputException(
                InputIds.Option,
                "--count belongs to --at map; one coupon is placed otherwise. Leave it away, or add --at map."
            );
        return
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count)
            && count is >= 1 and <= 50
            ? count
            : throw new InputException(InputIds.Option, $"--count {text}: give a whole number from 1 to 50.");
    }

    /// <summary>The exposure times of a ladder's coupons, s; none when no ladder is asked for.</summary>
    /// <exception cref="InputException">No two times, out of range, or not spread over the plate.</exception>
    internal static IReadOnlyList<double> Ladder(PlaceRequest request, int count)
    {
        if (request.Ladder is not { } text)
            return [];
        if (!request.IsMap)
            throw new InputException(
                InputIds.Option,
                "The coupons of a ladder are spread over the plate; leave --at away."
            );
        string[] ends = text.Split(':');
        if (ends.Length != 2)
            throw new InputException(
                InputIds.Option,
                $"--ladder {text}: give the shortest and the longest exposure in s, as in 1.8:2.6."
            );
        try
        {
            return ExposureLadder.Times(
                Number("--ladder", ends[0], 0.05, 200),
                Number("--ladder", ends[1], 0.05, 200),
                count
            );
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Option, e);
        }
    }

    private static string Choice(string option, string? value, string standard, string other) =>
        value is null || value == standard ? standard
        : value == other ? other
        : throw new InputException(InputIds.Option, $"{option} {value}: give {standard} or {other}.");

    private static double Number(string option, string text, double min, double max) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
        && value >= min
        && value <= max
            ? value
            : throw new InputException(
                InputIds.Option,
                FormattableString.Invariant(
                    $"{option}: \"{text}\" is not a number from {min} to {max}. Use a point for decimals."
                )
            );
}
