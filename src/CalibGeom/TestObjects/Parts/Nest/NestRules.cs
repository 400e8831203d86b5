using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>What must hold of all boxes together: sizes, gauge band, joints.</summary>
internal static class NestRules
{
    // Below the least an error, below the good one a warning, mm: good is a band as high as a jaw is wide, bands that
    // face each other over most of that, a seated box that fingers can pull out again. A clearance below the least
    // cannot be told by feel from none (our estimate).
    private const double LeastBand = 2.0,
        GoodBand = 3.0,
        LeastEngaged = 0.5,
        GoodEngaged = 2.0,
        LeastGrip = 0.5,
        GoodGrip = 1.0,
        LeastClearance = 0.015;

    internal static IEnumerable<Finding> Check(NestPlan nest, PartPlace place) =>
        [
            .. Judge.Ascending("nest.sizes", nest.Spec.Sizes),
            .. Band(nest.Spec),
            .. nest.Joints(place.BaseZ).SelectMany(j => Joint(nest, j, place.Spec.Process)),
            .. nest
                .Boxes.Where(b => b.HasPocket)
                .Select(b => b.Well.VentWidth)
                .OrderDescending()
                .Take(1)
                .Select(w => Judge.Bridge("nest", "Each vent's roof", w)),
        ];

    /// <summary>
    /// A loose box against the depth of its pocket: the gauge bands face each other over some height, and enough stands
    /// out to pull it.
    /// </summary>
    internal static IEnumerable<Finding> Seat(JointPlan joint) =>
        [
            .. Judge.AtLeast(
                "bands-do-not-meet",
                KnownFeatures.JointFit(joint.Number),
                "The height over which the gauge bands face each other when seated",
                joint.EngagedTo - joint.EngagedFrom,
                LeastEngaged,
                GoodEngaged,
                "mm",
                "Make nest.gaugeBand and nest.pocketDepth larger, or leave more between neighbouring sizes."
            ),
            .. Judge.AtLeast(
                "box-sinks-in",
                KnownFeatures.JointFit(joint.Number),
                "What the seated box shows above its pocket",
                joint.Protrusion,
                LeastGrip,
                GoodGrip,
                "mm",
                "Leave more between neighbouring sizes."
            ),
        ];

    private static IEnumerable<Finding> Band(NestSpec nest)
    {
        foreach (
            Finding finding in Judge.AtLeast(
                "gauge-band-too-low",
                "nest.gaugeBand",
                "The gauge band",
                nest.GaugeBand,
                LeastBand,
                GoodBand,
                "mm",
                "Make nest.gaugeBand at least as high as caliper jaws are wide."
            )
        )
            yield return finding;
        double room = nest.PocketDepth - Proportions.LeadInHeight;
        if (nest.GaugeBand > room + 1e-9)
            yield return Judge.Finding(
                "gauge-band-too-high",
                Severity.Error,
                "nest.gaugeBand",
                "The gauge band",
                nest.GaugeBand,
                room,
                "mm",
                "Make nest.pocketDepth larger or nest.gaugeBand lower: the band ends below the lead-in."
            );
    }

    private static IEnumerable<Finding> Joint(NestPlan nest, JointPlan joint, ProcessSpec? process) =>
        [
            .. Clearance(joint, "x", joint.Clearance.X),
            .. Clearance(joint, "y", joint.Clearance.Y),
            .. Seat(joint),
            .. process is null ? [] : OnPixels(nest, joint, process.PixelPitch),
        ];

    private static IEnumerable<Finding> Clearance(JointPlan joint, string axis, double clearance)
    {
        if (Math.Abs(clearance) < LeastClearance)
            yield return Judge.Finding(
                "clearance-says-nothing",
                Severity.Warning,
                KnownFeatures.JointFit(joint.Number),
                $"The clearance along {axis}, neither a gap nor an overlap that could be felt,",
                clearance,
                LeastClearance,
                "mm",
                "Choose a clearance above the limit, or well below zero for a not-go joint."
            ) with
            {
                Axis = axis,
            };
    }

    private static IEnumerable<Finding> OnPixels(NestPlan nest, JointPlan joint, PerAxis pitch)
    {
        PerAxis outside = nest.Boxes[joint.Number - 1].Frame.Outside,
            inside = nest.Boxes[joint.Number].Frame.Inside,
            wanted = joint.WantedClearance;
        return
        [
            .. OnPixels(joint.Number, "x", outside.X, inside.X, wanted.X, pitch.X),
            .. OnPixels(joint.Number, "y", outside.Y, inside.Y, wanted.Y, pitch.Y),
        ];
    }

    private static IEnumerable<Finding> OnPixels(
        int joint,
        string axis,
        double outside,
        double inside,
        double wanted,
        double pitch
    )
    {
        PixelCount o = PixelCount.Of(outside, pitch),
            i = PixelCount.Of(inside, pitch);
        double least = (i.Fewest - o.Most) * pitch / 2,
            most = (i.Most - o.Fewest) * pitch / 2;
        string subject = KnownFeatures.JointFit(joint),
            range = least == most
                ? FormattableString.Invariant($"{least:0.####} mm")
                : FormattableString.Invariant($"{least:0.####} to {most:0.####} mm");
        yield return Judge.Note(
            "pixel-clearance",
            subject,
            FormattableString.Invariant(
                $"The clearance along {axis} becomes {range} on these pixels ({wanted:0.####} mm wanted)."
            ),
            least,
            most,
            "mm"
        ) with
        {
            Axis = axis,
        };
        if (Math.Sign(wanted) * (wanted > 0 ? least : most) <= 0 && wanted != 0)
            yield return Judge.Finding(
                "clearance-lost-to-pixels",
                Severity.Warning,
                subject,
                $"The clearance along {axis} that the pixels leave in the worst case",
                wanted > 0 ? least : most,
                wanted,
                "mm",
                "Choose a clearance of at least a pixel, or let process.snap move widths onto pixels."
            ) with
            {
                Axis = axis,
            };
    }
}
