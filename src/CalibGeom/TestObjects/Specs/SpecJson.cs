using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using CalibGeom.Features.Files;

namespace CalibGeom.TestObjects.Specs;

/// <summary>
/// Specs as JSON. Every name is optional; what is left out keeps its default. Comments and trailing commas are read,
/// and a byte order mark; unknown names, wrong types, values out of range and names that stand twice are refused with
/// their JSON path, line and column (from 1).
/// </summary>
public static class SpecJson
{
    /// <summary>The most bytes that are read: 1 MiB.</summary>
    public const int MaximumBytes = ReaderLimits.SpecBytes;

    // Signs such as the micro sign stand as they are: the text is read as UTF-8, never put into a web page.
    private static readonly SpecJsonContext Context = new(
        new JsonSerializerOptions(SpecJsonContext.Default.Options)
        {
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    /// <summary>The names that can be set, such as <c>columns.height</c>, in the order of the reference.</summary>
    public static IReadOnlyList<string> ParameterNames =>
        [SpecParameters.Title.Path, .. SpecParameters.Groups.SelectMany(g => g.Parameters).Select(p => p.Path)];

    /// <summary>Reads a spec.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="basis">What keeps its value where the document says nothing; null takes the defaults.</param>
    /// <param name="assignments">Values such as <c>columns.height=10</c>, <c>nest.sizes=8,11.2</c> or <c>slots=null</c>
    /// that are laid over the document, in order.</param>
    /// <exception cref="InputException">Not a spec; the message names the JSON path, line and column, or the
    /// assignment.</exception>
    /// <exception cref="IOException">Reading failed.</exception>
    public static TestObjectSpec Read(
        Stream stream,
        TestObjectSpec? basis = null,
        IEnumerable<string>? assignments = null
    ) => Parse(InputBytes.Utf8(InputBytes.Read(stream, MaximumBytes, "a spec"), "A spec"), basis, assignments);

    /// <summary>Reads a spec from text.</summary>
    /// <param name="text">The whole document.</param>
    /// <param name="basis">What keeps its value where the document says nothing; null takes the defaults.</param>
    /// <param name="assignments">Values such as <c>columns.height=10</c>, <c>nest.sizes=8,11.2</c> or <c>slots=null</c>
    /// that are laid over the document, in order.</param>
    /// <exception cref="InputException">Not a spec; the message names the JSON path, line and column, or the
    /// assignment.</exception>
    public static TestObjectSpec Parse(
        string text,
        TestObjectSpec? basis = null,
        IEnumerable<string>? assignments = null
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > MaximumBytes)
            throw new InputException(
                InputIds.Spec,
                $"The spec is longer than {MaximumBytes} characters. Check that it is the right file."
            );
        var layers = new SpecLayers(basis ?? new TestObjectSpec());
        SpecScanner.Scan(text.TrimStart('\uFEFF'), layers);
        return layers.Assign(assignments ?? []).ToSpec();
    }

    /// <summary>A spec with some values changed.</summary>
    /// <param name="basis">The spec to change.</param>
    /// <param name="assignments">Values such as <c>columns.height=10</c>, <c>nest.sizes=8,11.2</c> or
    /// <c>slots=null</c>, in order.</param>
    /// <exception cref="InputException">An unknown name or a bad value; the message names the assignment.</exception>
    public static TestObjectSpec With(TestObjectSpec basis, IEnumerable<string> assignments)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(assignments);
        return new SpecLayers(basis).Assign(assignments).ToSpec();
    }

    /// <summary>A spec as JSON with all values filled in, one parameter a line.</summary>
    /// <param name="spec">The spec.</param>
    public static string ToText(TestObjectSpec spec) => SpecLayout.Plain(ToNode(spec));

    /// <summary>
    /// A spec as <see cref="ToText"/> writes it, with a comment to each parameter that says what it is, its unit and
    /// range. Reading it gives the same spec.
    /// </summary>
    /// <param name="spec">The spec.</param>
    /// <param name="heading">A line to stand at the top, or null.</param>
    public static string ToCommentedText(TestObjectSpec spec, string? heading = null) =>
        SpecLayout.Commented(ToNode(spec), heading);

    /// <summary>
    /// The canonical form: JSON in UTF-8 without a byte order mark, white space or line end; every name in the order of
    /// the reference, with defaults filled in and groups that are left out as <c>null</c> (<c>bridge</c>, which came
    /// later, not at all); numbers as short as they can be without losing a bit; equal values on both axes as one
    /// number.
    /// </summary>
    /// <param name="spec">The spec.</param>
    public static byte[] ToCanonicalBytes(TestObjectSpec spec)
    {
        ArgumentNullException.ThrowIfNull(spec);
        return JsonSerializer.SerializeToUtf8Bytes(spec, Context.TestObjectSpec);
    }

    /// <summary>A value as JSON.</summary>
    internal static string Raw(JsonNode node) => node.ToJsonString(Context.Options);

    internal static JsonObject ToNode(TestObjectSpec spec) => JsonNode.Parse(ToCanonicalBytes(spec))!.AsObject();

    internal static JsonNode ToNode(object group) => JsonSerializer.SerializeToNode(group, group.GetType(), Context)!;

    internal static TestObjectSpec FromNode(JsonObject node) => node.Deserialize(Context.TestObjectSpec)!;

    /// <summary>The same from a stream that is only ever read asynchronously.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="basis">As for <see cref="Read"/>.</param>
    /// <param name="assignments">As for <see cref="Read"/>.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="InputException">As for <see cref="Read"/>.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<TestObjectSpec> ReadAsync(
        Stream stream,
        TestObjectSpec? basis = null,
        IEnumerable<string>? assignments = null,
        CancellationToken cancellation = default
    ) => AsyncStreams.ReadAsync(stream, MaximumBytes, from => Read(from, basis, assignments), cancellation);

    /// <summary>Writes a spec in canonical form to a stream that is only ever written asynchronously.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="spec">The spec.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static Task WriteAsync(Stream stream, TestObjectSpec spec, CancellationToken cancellation = default) =>
        AsyncStreams.WriteAsync(stream, to => to.Write(ToCanonicalBytes(spec)), cancellation);
}
