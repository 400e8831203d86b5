using CalibGeom.Cli.Shared;
using CalibGeom.Objects;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Plates;

namespace CalibGeom.Cli.Place;

/// <summary>One run of <c>place</c>.</summary>
internal static class PlaceRun
{
    internal static int Run(CommandIo io, PlaceRequest request)
    {
        RequireSense(io, request);
        SpecSource source = request.Source;
        int count = PlaceValues.Count(request);
        Plate plate = PlaceValues.Plate(request, source.Spec.Process);
        PlacementRules rules = PlaceValues.Rules(request, source.Spec.Process);
        PlacementWish? wish = request.IsMap ? null : PlaceValues.Wish(request);
        using PlaceParts parts = PlaceParts.Open(io, request.Parts, request.Lenient);
        IReadOnlyList<double> ladder = PlaceValues.Ladder(request, count);
        CouponSet coupons = request.IsMap
            ? CouponSet.Of(source.Name, source.Spec, count, ladder)
            : CouponSet.Of(source.Name, source.Spec);
        if (coupons.HasErrors)
            return Refuse(io, request, coupons.Findings);
        var layout = new PlateLayout(plate, parts.All, rules);
        if (request.Centre)
            layout = layout.Centred();
        if (!Place(layout, coupons, wish))
        {
            IEnumerable<Coupon> presets = coupons.OtherPresets();
            Finding missing = request.IsMap
                ? PlacementAdvice.ExplainMap(layout, coupons.All, presets)
                : PlacementAdvice.Explain(layout, coupons.All[0].Coupon, presets);
            parts.EndProgress();
            return Refuse(io, request, [missing, .. layout.Findings]);
        }
        IReadOnlyList<Finding> overlaps = layout.FindOverlaps();
        PlaceFiles files = PlaceFiles.Write(io, request, layout, parts, coupons);
        parts.EndProgress();
        IEnumerable<Finding> leftOut = parts.All.SelectMany(p => p.LeftOut);
        Finding[] findings = [.. overlaps, .. leftOut, .. layout.Findings, .. Told(coupons)];
        Report(io, request, layout, coupons, findings, files);
        return ExitCode.Done;
    }

    private static bool Place(PlateLayout layout, CouponSet coupons, PlacementWish? wish) =>
        wish is null ? layout.PlaceMap(coupons.All) is not null : layout.Place(coupons.All[0].Coupon, wish) is not null;

    private static int Refuse(CommandIo io, PlaceRequest request, IEnumerable<Finding> findings)
    {
        if (request.Json)
            Envelope.Write(io.Out, "place", findings, null);
        else
            FindingText.Write(io.Out, findings);
        io.Error.WriteLine("Nothing was written.");
        return ExitCode.Finding;
    }

    private static void Report(
        CommandIo io,
        PlaceRequest request,
        PlateLayout layout,
        CouponSet coupons,
        Finding[] findings,
        PlaceFiles files
    )
    {
        TextWriter result = request.Output == "-" ? io.Error : io.Out;
        if (request.Json)
            Envelope.Write(result, "place", findings, PlaceReport.Describe(layout, coupons, files));
        else
        {
            PlaceReport.Write(result, layout, coupons, files);
            FindingText.Write(result, findings);
            io.SayCaution();
        }
        foreach (string path in files.Paths)
            io.Say($"wrote {path}");
        if (files.ObjectPath is { } written)
        {
            NextCommand.Readings(io, written);
            foreach (string label in layout.Coupons.Select(c => c.Label).Where(l => coupons.ExposureOf(l) is not null))
                io.Say(
                    $"then for {label}: calibgeom log add READINGS --coupon {label} --to LOG (its exposure is known)"
                );
        }
    }

    private static IEnumerable<Finding> Told(CouponSet coupons) =>
        coupons.Findings.Where(f => f.Severity > Severity.Note);

    private static void RequireSense(CommandIo io, PlaceRequest request)
    {
        if (request.Parts.Length == 0 && request.Ladder is null)
            throw new InputException(
                InputIds.Option,
                "Name the parts that a coupon is to stand beside; only a --ladder needs none."
            );
        if (request.Parts.Count(p => p == "-") + (request.SpecTakesInput ? 1 : 0) > 1)
            throw new InputException(InputIds.Option, "Standard input can be used once. Name files.");
        if (request is { Json: true, Output: "-" })
            throw new InputException(
                InputIds.Option,
                "--json and -o - would both write to standard output. Name a file."
            );
        if (request.Picture is { } picture)
            Drawing.RequireName(picture);
        if (
            request.Output != "-"
            && !request.IsThreeMf
            && !request.Output.EndsWith(".stl", StringComparison.OrdinalIgnoreCase)
        )
            throw new InputException(
                InputIds.Option,
                $"{request.Output}: the name must end in .stl or .3mf. Use - for standard output."
            );
        io.RequireFree(PlacePaths.Outputs(request));
    }
}
