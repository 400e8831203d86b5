using CalibGeom.Features.Files;
using CalibGeom.Meshes;

namespace CalibGeom.Formats;

/// <summary>What was read from a mesh file. Immutable and safe to share between threads.</summary>
public sealed class MeshFile
{
    private static readonly IReadOnlyDictionary<string, string> None = new Dictionary<string, string>();

    internal MeshFile(
        MeshFormat format,
        IReadOnlyList<MeshObject> objects,
        Faults faults,
        IReadOnlyDictionary<string, string>? metadata = null
    )
    {
        (Format, Objects, Dropped, IsDamaged, Metadata) = (
            format,
            objects,
            faults.Dropped,
            faults.Damaged,
            metadata ?? None
        );
    }

    /// <summary>The format, decided by the content and not by the name.</summary>
    public MeshFormat Format { get; }

    /// <summary>
    /// The objects in file order: the solids of an ASCII STL, the <c>o</c> objects of an OBJ, the build items of a 3MF
    /// with their transforms applied; one for a binary STL.
    /// </summary>
    public IReadOnlyList<MeshObject> Objects { get; }

    /// <summary>
    /// What was left out, a sentence for each kind. Strict reading leaves out only what cannot change the geometry,
    /// such as the lines and points of an OBJ.
    /// </summary>
    public IReadOnlyList<string> Dropped { get; }

    /// <summary>
    /// Whether lenient reading left out something that is damaged, so that the geometry may not be whole.
    /// </summary>
    public bool IsDamaged { get; }

    /// <summary>
    /// What was left out as findings: a note where that cannot change the geometry, a warning where damage was passed
    /// over.
    /// </summary>
    /// <param name="name">What to call the file.</param>
    internal IReadOnlyList<Finding> LeftOut(string name) =>
        [.. Dropped.Select(d => new Finding("left-out", IsDamaged ? Severity.Warning : Severity.Note, name, d, ""))];

    /// <summary>
    /// The metadata of a 3MF by name; namespaced names as <c>{namespace}name</c>. Empty for other formats.
    /// </summary>
    public IReadOnlyDictionary<string, string> Metadata { get; }

    /// <summary>The spec that a 3MF of this library carries, as JSON text; null when there is none.</summary>
    public string? SpecJson => Metadata.GetValueOrDefault(ThreeMf.ThreeMfNames.SpecMetadata);

    /// <summary>All objects in one mesh; nothing is welded between them.</summary>
    public TriangleMesh ToMesh() => TriangleMesh.Join([.. Objects.Select(o => o.Mesh)]);

    /// <summary>
    /// Reads a mesh file: binary or ASCII STL, OBJ or 3MF. Units of a 3MF are converted to mm; those of the others are
    /// taken as mm.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="lenient">Whether to read what is whole of a damaged file and say in <see cref="Dropped"/> what is
    /// missing; otherwise any fault is an error.</param>
    /// <param name="progress">Told the share that was read, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="InputException">No such file, no mesh format, or a fault; the message gives the byte or the
    /// line.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static MeshFile Read(
        string path,
        bool lenient = false,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        using FileStream stream = InputFile.Open(path);
        return Read(stream, path, lenient, progress, cancellation);
    }

    /// <summary>Reads a mesh from a stream.</summary>
    /// <param name="stream">At the start of the file, which goes on to the stream's end; left open. One that cannot
    /// seek is first copied to a temporary file.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <param name="lenient">As for <see cref="Read(string, bool, IProgress{double}, CancellationToken)"/>.</param>
    /// <param name="progress">Told the share that was read, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="InputException">No mesh format, or a fault; the message gives the byte or the line.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static MeshFile Read(
        Stream stream,
        string name,
        bool lenient = false,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        if (stream.CanSeek)
            return ReadSeekable(stream, new Faults(name, lenient), progress, cancellation);
        using TemporaryCopy copy = TemporaryCopy.Of(stream, name);
        return Read(copy, name, lenient, progress, cancellation);
    }

    /// <summary>
    /// Reads a mesh from a stream that is only ever read asynchronously, such as the body of a web request: first
    /// into a temporary file, then from there.
    /// </summary>
    /// <param name="stream">At the start of the file, which goes on to the stream's end; left open.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <param name="lenient">As for <see cref="Read(string, bool, IProgress{double}, CancellationToken)"/>.</param>
    /// <param name="progress">Told the share that was read, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="InputException">No mesh format, or a fault; the message gives the byte or the line.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static async Task<MeshFile> ReadAsync(
        Stream stream,
        string name,
        bool lenient = false,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        using TemporaryCopy copy = await TemporaryCopy
            .OfAsync(stream, name, cancellation: cancellation)
            .ConfigureAwait(false);
        return Read(copy, name, lenient, progress, cancellation);
    }

    private static MeshFile Read(
        TemporaryCopy copy,
        string name,
        bool lenient,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        using FileStream file = InputFile.Open(copy.Path);
        return ReadSeekable(file, new Faults(name, lenient), progress, cancellation);
    }

    private static MeshFile ReadSeekable(
        Stream stream,
        Faults faults,
        IProgress<double>? progress,
        CancellationToken cancellation
    ) =>
        ReadSeekable(
            progress is null && !cancellation.CanBeCanceled
                ? stream
                : new WatchedStream(stream, progress, cancellation),
            faults
        );

    private static MeshFile ReadSeekable(Stream stream, Faults faults) =>
        FormatSniffer.Decide(stream, faults).Read(stream, faults);

    /// <summary>Writes meshes in the format that a name's end chooses: .stl (binary, one mesh), .obj or .3mf.</summary>
    /// <param name="stream">Where to; written front to back, left open.</param>
    /// <param name="name">The file's name, whose end alone counts.</param>
    /// <param name="objects">The meshes, at least one; only a 3MF keeps their transforms apart.</param>
    /// <param name="content">The title, which an STL takes as its header, the application and the spec; nothing when
    /// left out.</param>
    /// <param name="cancellation">Stops the writing; what was written by then stands in the stream.</param>
    /// <exception cref="ArgumentException">There is no mesh, or one that the format cannot hold.</exception>
    /// <exception cref="InputException">The name has another end, or the meshes do not fit the format.</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static void Write(
        Stream stream,
        string name,
        IReadOnlyList<MeshObject> objects,
        ThreeMf.ThreeMfContent? content = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(objects);
        if (objects.Count == 0)
            throw new ArgumentException("There is no mesh to write.", nameof(objects));
        Stream to = cancellation.CanBeCanceled ? new StoppingStream(stream, cancellation) : stream;
        ByName(name).Write(to, objects, content ?? new ThreeMf.ThreeMfContent());
    }

    /// <summary>
    /// Writes meshes to a stream that is only ever written asynchronously, such as the body of a web response; the
    /// bytes stand in memory before they go.
    /// </summary>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="name">The file's name, whose end alone counts.</param>
    /// <param name="objects">The meshes, at least one; only a 3MF keeps their transforms apart.</param>
    /// <param name="content">As for <see cref="Write"/>.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="ArgumentException">There is no mesh, or one that the format cannot hold.</exception>
    /// <exception cref="InputException">The name has another end, or the meshes do not fit the format.</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped; nothing went to the stream unless the bytes
    /// were going already.</exception>
    public static Task WriteAsync(
        Stream stream,
        string name,
        IReadOnlyList<MeshObject> objects,
        ThreeMf.ThreeMfContent? content = null,
        CancellationToken cancellation = default
    ) => AsyncStreams.WriteAsync(stream, to => Write(to, name, objects, content), cancellation);

    private static IMeshFormat ByName(string name) =>
        IMeshFormat.All.FirstOrDefault(f =>
            f.Extension is { } end && name.EndsWith(end, StringComparison.OrdinalIgnoreCase)
        )
        ?? throw new InputException(
            InputIds.Mesh,
            $"{name}: the name must end in {string.Join(", ", IMeshFormat.All.Select(f => f.Extension).OfType<string>())}."
        );
}
