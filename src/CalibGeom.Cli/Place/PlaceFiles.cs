using CalibGeom.Cli.Shared;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Objects;
using CalibGeom.Pictures.Plates;
using CalibGeom.Plates;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Place;

/// <summary>The files that <c>place</c> wrote, and the distance that was measured on the way.</summary>
internal sealed record PlaceFiles(IReadOnlyList<string> Paths, double Distance)
{
    /// <summary>Where the object file is; null when none was written.</summary>
    internal string? ObjectPath { get; private init; }

    internal static PlaceFiles Write(
        CommandIo io,
        PlaceRequest request,
        PlateLayout layout,
        PlaceParts parts,
        CouponSet coupons
    )
    {
        SpecSource source = request.Source;
        ObjectFile file = ObjectFile.Of(source.Name, source.Spec, layout);
        file = file with { Coupons = [.. file.Coupons.Select(c => c with { Exposure = coupons.ExposureOf(c.Label) })] };
        string digest = file.Digest;
        string header = ObjectHeader.Of(request.CouponsOnly ? source.Name : $"parts and {source.Name}", digest);
        var paths = new List<string>();
        double distance = double.NaN;
        if (request.Output != "-")
        {
            file = file with { Mesh = Path.GetFileName(request.Output), Parts = parts.Describe() };
            io.RequireSameObject(ObjectFile.Beside(request.Output), file);
        }
        using var files = io.NewOutputs();
        if (request.Output == "-")
        {
            using Stream standard = io.OpenOutput();
            distance = Mesh(standard);
        }
        else
        {
            Add(request.Output, stream => distance = Mesh(stream));
            var features = new FeatureTable(layout.Coupons.SelectMany(c => c.Features), digest);
            Add(PlacePaths.Features(request.Output), stream => FeatureTableCsv.Write(stream, features));
            Add(ObjectFile.Beside(request.Output), stream => ObjectFileJson.Write(stream, file));
        }
        if (request.Picture is { } picture)
            Add(picture, stream => PlatePicture.Draw(layout, Title(layout)).Write(picture, stream));
        files.Commit();
        return new PlaceFiles(paths, distance)
        {
            ObjectPath = request.Output == "-" ? null : ObjectFile.Beside(request.Output),
        };

        void Add(string path, Action<Stream> write)
        {
            files.Add(path, write);
            paths.Add(path);
        }

        double Mesh(Stream stream)
        {
            var content = new ThreeMfContent
            {
                Title = "Production parts with a witness coupon",
                Application = $"CalibGeom {Envelope.Version}",
            };
            if (request.IsThreeMf)
                return PlateMerge.WriteThreeMf(stream, layout, content, !request.CouponsOnly);
            return request.CouponsOnly
                ? PlateMerge.WriteCouponsStl(stream, layout, header)
                : PlateMerge.WriteStl(stream, layout, header);
        }
    }

    private static string Title(PlateLayout layout)
    {
        string coupons =
            layout.Coupons.Count == 1
                ? $"{layout.Coupons[0].Coupon.Name} coupon"
                : $"{layout.Coupons.Count} {layout.Coupons[0].Coupon.Name} coupons";
        return FormattableString.Invariant(
            $"Plate {layout.Plate.Width:0.##} x {layout.Plate.Depth:0.##} mm with {coupons}"
        );
    }
}
