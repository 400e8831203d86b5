using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using CalibGeom.Features.Files;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects;

/// <summary>
/// Object files as JSON: <c>{"format": 1, "name", "digest", "mesh", "spec", "coupons", "parts"}</c>, UTF-8, indented,
/// lines ending in LF.
/// </summary>
public static class ObjectFileJson
{
    /// <summary>The format that is written and read.</summary>
    public const int Format = 1;

    private const string Remedy = "Take the .object.json that was written beside the mesh.";

    // Signs such as the micro sign stand as they are: the text is read as UTF-8, never put into a web page.
    private static readonly ObjectFileJsonContext Context = new(
        new JsonSerializerOptions(ObjectFileJsonContext.Default.Options)
        {
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    /// <summary>An object as text.</summary>
    /// <param name="file">The object.</param>
    public static string ToText(ObjectFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        using JsonDocument spec = JsonDocument.Parse(SpecJson.ToCanonicalBytes(file.Spec));
        var document = new ObjectDocument
        {
            Format = Format,
            Name = file.Name,
            Digest = file.Digest,
            Mesh = file.Mesh.Length > 0 ? file.Mesh : null,
            Spec = spec.RootElement,
            Coupons = file.Coupons.Count == 0 ? null : file.Coupons.Select(ToDocument).ToList(),
            Parts = file.Parts.Count == 0 ? null : file.Parts.Select(ToDocument).ToList(),
        };
        return JsonSerializer.Serialize(document, Context.ObjectDocument) + "\n";
    }

    /// <summary>Writes an object.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="file">The object.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static void Write(Stream stream, ObjectFile file)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(Encoding.UTF8.GetBytes(ToText(file)));
    }

    /// <summary>Reads an object.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <exception cref="InputException">Not such a file, or one that was changed by hand.</exception>
    /// <exception cref="IOException">Reading failed.</exception>
    public static ObjectFile Read(Stream stream, string name) =>
        Parse(InputBytes.Utf8(InputBytes.Read(stream, SpecJson.MaximumBytes, "an object file"), name), name);

    /// <summary>Reads an object from text.</summary>
    /// <param name="text">The whole text.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <exception cref="InputException">Not such a file, or one that was changed by hand.</exception>
    public static ObjectFile Parse(string text, string name)
    {
        ArgumentNullException.ThrowIfNull(text);
        try
        {
            ObjectDocument document =
                JsonSerializer.Deserialize(text, Context.ObjectDocument)
                ?? throw new InputException(InputIds.ObjectFile, $"{name}: this is no object file. {Remedy}");
            return Check(document, name);
        }
        catch (JsonException e)
        {
            throw new InputException(
                InputIds.ObjectFile,
                FormattableString.Invariant(
                    $"{name}:{(e.LineNumber ?? 0) + 1}:{(e.BytePositionInLine ?? 0) + 1}: this is no object file. {Remedy}"
                ),
                e
            );
        }
    }

    private static ObjectFile Check(ObjectDocument document, string name)
    {
        if (document.Format != Format)
            throw new InputException(
                InputIds.ObjectFile,
                $"{name}: format {document.Format} is not known here; this version reads format {Format}. {Remedy}"
            );
        if (document.Name.Length == 0)
            throw new InputException(InputIds.ObjectFile, $"{name}: the object has no name. {Remedy}");
        var file = new ObjectFile(document.Name, SpecJson.Parse(document.Spec.GetRawText()))
        {
            Mesh = document.Mesh ?? "",
            Coupons = (document.Coupons ?? []).Select(c => ToCoupon(c, name)).ToArray(),
            Parts = (document.Parts ?? []).Select(p => new ObjectPart(p.Name, p.Sha256)).ToArray(),
        };
        return file.Digest == document.Digest
            ? file
            : throw new InputException(
                InputIds.ObjectFile,
                $"{name}: its digest is {document.Digest}, but what stands in it has {file.Digest}: it was changed by "
                    + $"hand. Make the object anew instead."
            );
    }

    private static ObjectCoupon ToCoupon(ObjectDocument.CouponDocument c, string name) =>
        c.Turn is 0 or 90
            ? new ObjectCoupon(c.Label ?? "", c.X, c.Y, c.Z, c.Turn) { Exposure = c.Exposure }
            : throw new InputException(
                InputIds.ObjectFile,
                $"{name}: a coupon is turned by 0 or 90 degrees, not {c.Turn}. {Remedy}"
            );

    private static ObjectDocument.CouponDocument ToDocument(ObjectCoupon c) =>
        new()
        {
            Label = c.Label.Length > 0 ? c.Label : null,
            X = c.X,
            Y = c.Y,
            Z = c.Z,
            Turn = c.Turn,
            Exposure = c.Exposure,
        };

    private static ObjectDocument.PartDocument ToDocument(ObjectPart p) => new() { Name = p.Name, Sha256 = p.Sha256 };

    /// <summary>The same from a stream that is only ever read asynchronously.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="InputException">As for <see cref="Read"/>.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<ObjectFile> ReadAsync(Stream stream, string name, CancellationToken cancellation = default) =>
        AsyncStreams.ReadAsync(stream, ReaderLimits.SpecBytes, from => Read(from, name), cancellation);

    /// <summary>The same to a stream that is only ever written asynchronously.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="file">The object.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static Task WriteAsync(Stream stream, ObjectFile file, CancellationToken cancellation = default) =>
        AsyncStreams.WriteAsync(stream, to => Write(to, file), cancellation);
}
