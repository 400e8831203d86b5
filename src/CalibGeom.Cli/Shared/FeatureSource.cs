using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// Where the nominal sizes come from: a feature table, a spec, a preset, or the preset that the readings' digest names.
/// </summary>
internal sealed record FeatureSource(string Name, FeatureTable Features, double? PixelPitch, Finding? Assumed)
{
    /// <exception cref="InputException">More than one source is named, or one cannot be used.</exception>
    internal static FeatureSource Load(CommandIo io, string? features, string? spec, string? preset, string? digest)
    {
        if (features is not null && (spec ?? preset) is not null)
            throw new InputException("--features already says what was printed; leave --spec and --preset away.");
        if (features is not null)
            return new FeatureSource(features, Table(io, features), null, null);
        if ((spec ?? preset) is not null)
            return Of(SpecSource.Load(io, spec, preset, []), null);
        Preset? named = digest is null ? null : Presets.All.FirstOrDefault(p => SpecDigest.Of(p.Spec) == digest);
        if (named is not null)
            return Of(new SpecSource(named.Name, named.Spec), null);
        Preset standard = SpecSource.FindPreset("standard");
        return Of(
            new SpecSource(standard.Name, standard.Spec),
            new Finding(
                "nominals-assumed",
                Severity.Note,
                "",
                "Nothing says what was printed; nominal sizes are those of the preset standard.",
                "Name it with --features, --spec or --preset, or keep the \"# digest\" line of the readings file."
            )
        );
    }

    /// <summary>The readings of one or more files, together.</summary>
    /// <exception cref="InputException">A file is missing or cannot be used, or files disagree.</exception>
    internal static ReadingSet Readings(CommandIo io, IReadOnlyList<string> paths) =>
        ReadingSet.Merge(
            paths
                .Select(path =>
                {
                    if (path == "-")
                    {
                        using Stream input = io.OpenInput();
                        return ReadingsFile.Read(input, "standard input");
                    }
                    RequireFile(path, "Name a readings file; \"calibgeom readings\" writes an empty one.");
                    return ReadingsFile.Load(path);
                })
                .ToArray()
        );

    private static FeatureSource Of(SpecSource source, Finding? assumed)
    {
        TestObject made = TestObjectBuilder.Build(source.Spec);
        double? pitch = made.Spec.Process is { } process ? Math.Max(process.PixelPitch.X, process.PixelPitch.Y) : null;
        return new FeatureSource(source.Name, made.Features, pitch, assumed);
    }

    private static FeatureTable Table(CommandIo io, string path)
    {
        if (path != "-")
            RequireFile(path, "Name the .features.csv that was written beside the object.");
        try
        {
            using Stream stream = path == "-" ? io.OpenInput() : File.OpenRead(path);
            return path.EndsWith(".json", StringComparison.OrdinalIgnoreCase)
                ? FeatureTableJson.Read(stream)
                : FeatureTableCsv.Read(stream);
        }
        catch (InputException e)
        {
            throw new InputException($"{(path == "-" ? "standard input" : path)}: {e.Message}", e);
        }
    }

    private static void RequireFile(string path, string remedy)
    {
        if (Directory.Exists(path))
            throw new InputException($"{path}: this is a directory. {remedy}");
        if (!File.Exists(path))
            throw new InputException($"{path}: there is no such file. {remedy}");
    }
}
