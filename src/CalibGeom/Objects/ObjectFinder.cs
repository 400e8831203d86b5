using CalibGeom.Features.Files;
using CalibGeom.Formats;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects;

/// <summary>Finds the object that a digest or a person names.</summary>
public static class ObjectFinder
{
    /// <summary>What standard input is called: a spec in JSON.</summary>
    public const string StandardInput = "standard input";

    /// <summary>
    /// What the names of feature tables end in that say all that measurement needs, mates of fits included: what a
    /// table in CSV leaves out where parts are not ours.
    /// </summary>
    public const string TableExtension = ".features.json";

    private const int MostFiles = ReaderLimits.ObjectFilesInFolder;

    /// <summary>
    /// The object with a digest: a preset, or an object file beside the inputs or in a folder such as the current one.
    /// </summary>
    /// <param name="digest">16 hex digits.</param>
    /// <param name="folders">The folders to look into, in this order.</param>
    /// <exception cref="InputException">None has it; the message names the file that is wanted.</exception>
    public static KnownObject Require(string digest, IEnumerable<string> folders)
    {
        string[] all = folders.Select(Path.GetFullPath).Distinct(StringComparer.Ordinal).ToArray();
        return Find(digest, all)
            ?? throw new InputException(
                InputIds.ObjectFile,
                $"No known object has the digest {digest}. Wanted is the {ObjectFile.Extension} that was written "
                    + $"beside its mesh: put it into {string.Join(" or ", all)}, or name it."
            );
    }

    /// <summary>As <see cref="Require"/>, but null when none has it.</summary>
    /// <param name="digest">16 hex digits.</param>
    /// <param name="folders">The folders to look into, in this order.</param>
    public static KnownObject? Find(string digest, IEnumerable<string> folders)
    {
        ArgumentNullException.ThrowIfNull(digest);
        ArgumentNullException.ThrowIfNull(folders);
        if (Presets.All.FirstOrDefault(p => SpecDigest.Of(p.Spec) == digest) is { } preset)
            return KnownObject.Of(new ObjectFile(preset.Name, preset.Spec));
        ObjectFile? file = folders
            .Where(Directory.Exists)
            .SelectMany(ObjectFiles)
            .Select(TryRead)
            .FirstOrDefault(f => f?.Digest == digest);
        return file is null ? null : KnownObject.Of(file);
    }

    /// <summary>
    /// The object that a person names: a preset; an object file; a spec in JSON, whose missing values are those of the
    /// preset <c>standard</c>; a 3MF that carries its spec; any other mesh with its object file beside it, as a plate
    /// has it; a feature table.
    /// </summary>
    /// <param name="name">The preset or the path.</param>
    /// <param name="assignments">Values to change, such as <c>columns.height=10</c>.</param>
    /// <exception cref="InputException">There is none, it is unreadable, or there is nothing to change in
    /// it.</exception>
    public static KnownObject Read(string name, IReadOnlyList<string> assignments)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(assignments);
        if (Presets.Find(name) is { } preset)
            return Changed(new ObjectFile(preset.Name, preset.Spec), assignments);
        RequireFile(name);
        using FileStream stream = File.OpenRead(name);
        return Read(stream, name, assignments);
    }

    /// <summary>The object that a stream holds.</summary>
    /// <param name="stream">A spec, an object file, a 3MF or a feature table; stays open.</param>
    /// <param name="name">Its name, whose ending tells what it is.</param>
    /// <param name="assignments">Values to change.</param>
    /// <exception cref="InputException">It is unreadable, or there is nothing to change in it.</exception>
    public static KnownObject Read(Stream stream, string name, IReadOnlyList<string> assignments)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(assignments);
        string end = Path.GetExtension(name).ToUpperInvariant();
        if (name.EndsWith(ObjectFile.Extension, StringComparison.OrdinalIgnoreCase))
            return Changed(ObjectFileJson.Read(stream, name), assignments);
        if (end is ".STL" or ".OBJ")
            return Read(BesideOf(name), assignments);
        if (name.EndsWith(TableExtension, StringComparison.OrdinalIgnoreCase))
            return Table(FeatureTableJson.Read, stream, name, assignments);
        if (end == ".CSV")
            return Table(FeatureTableCsv.Read, stream, name, assignments);
        if (IsPackage(name))
            return Package(stream, name, assignments);
        return KnownObject.Of(new ObjectFile(NameOf(name), Spec(() => SpecJson.Read(stream, null, assignments), name)));
    }

    private static bool IsPackage(string name) => name.EndsWith(".3mf", StringComparison.OrdinalIgnoreCase);

    /// <summary>A 3MF of one object carries its spec; that of a plate does not, for a spec has no places.</summary>
    private static KnownObject Package(Stream stream, string name, IReadOnlyList<string> assignments) =>
        MeshFile.Read(stream, name).SpecJson is { } carried
            ? KnownObject.Of(new ObjectFile(NameOf(name), Spec(() => SpecJson.Parse(carried, null, assignments), name)))
            : Read(BesideOf(name), assignments);

    /// <summary>The path of the one object file that a folder holds; null when it holds none.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="InputException">It holds several.</exception>
    public static string? OnlyFile(string folder)
    {
        string[] files = ObjectFiles(folder).ToArray();
        if (files.Length > 1)
            throw new InputException(
                InputIds.ObjectFile,
                $"{files.Length} objects lie here: {string.Join(", ", files.Take(5).Select(Path.GetFileName))}. Name the "
                    + "one that is meant."
            );
        return files.FirstOrDefault();
    }

    private static TestObjectSpec Spec(Func<TestObjectSpec> read, string name)
    {
        try
        {
            return read();
        }
        catch (InputException e)
        {
            throw e.In(name);
        }
    }

    private static KnownObject Changed(ObjectFile file, IReadOnlyList<string> assignments) =>
        KnownObject.Of(
            assignments.Count == 0
                ? file
                : new ObjectFile(file.Name, SpecJson.With(file.Spec, assignments)) { Coupons = file.Coupons }
        );

    private static KnownObject Table(
        Func<Stream, FeatureTable> read,
        Stream stream,
        string name,
        IReadOnlyList<string> assignments
    )
    {
        if (assignments.Count > 0)
            throw new InputException(
                InputIds.ObjectFile,
                $"{name} is a table of features, in which nothing can be set. Name the spec."
            );
        try
        {
            return new KnownObject(name, read(stream));
        }
        catch (InputException e)
        {
            throw e.In(name);
        }
    }

    private static string BesideOf(string mesh)
    {
        string beside = ObjectFile.Beside(mesh);
        return File.Exists(beside)
            ? beside
            : throw new InputException(
                InputIds.ObjectFile,
                $"{mesh}{(IsPackage(mesh) ? ": this 3MF carries no spec" : " is a mesh")}, and "
                    + $"{Path.GetFileName(beside)}, which says what it is, does not stand beside it. Name the spec or "
                    + "preset that it was made from."
            );
    }

    private static void RequireFile(string name)
    {
        if (Directory.Exists(name))
            throw new InputException(
                InputIds.ObjectFile,
                $"{name}: this is a directory. Name an object file, a spec or a preset."
            );
        if (!File.Exists(name))
            throw new InputException(
                InputIds.ObjectFile,
                $"{name}: there is no such file, and no preset of that name.{Meant(name)} The presets are "
                    + $"{string.Join(", ", Presets.All.Select(p => p.Name))}."
            );
    }

    private static string Meant(string name) =>
        Spelling.Nearest(name, Presets.All.Select(p => p.Name), Math.Max(1, name.Length / 3)) is { } near
            ? $" Did you mean {near}?"
            : "";

    private static IEnumerable<string> ObjectFiles(string folder) =>
        Directory.EnumerateFiles(folder, "*" + ObjectFile.Extension).Take(MostFiles).Order(StringComparer.Ordinal);

    /// <summary>Files in the way that are no object files are no concern of who looks for another.</summary>
    private static ObjectFile? TryRead(string path)
    {
        try
        {
            if (RealPath.IsDevice(path) || RealPath.IsPipe(path))
                return null;
            using FileStream stream = File.OpenRead(path);
            return ObjectFileJson.Read(stream, path);
        }
        catch (Exception e) when (e is InputException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static string NameOf(string path)
    {
        string name = path == StandardInput ? "" : Path.GetFileNameWithoutExtension(path);
        return name.Length > 0 ? name : "spec";
    }
}
