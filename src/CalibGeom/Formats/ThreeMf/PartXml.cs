using System.Text;
using System.Xml;

namespace CalibGeom.Formats.ThreeMf;

/// <summary>
/// One XML part, read forwards. UTF-8 only, with or without a byte order mark, no document type, no external entity, no
/// attributes of the xml and xsi namespaces but xml:lang on the root.
/// </summary>
internal sealed class PartXml : IDisposable
{
    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        IgnoreWhitespace = true,
        CloseInput = true,
    };

    private readonly XmlReader reader;
    private readonly string part;
    private readonly char[] value = new char[64];

    internal PartXml(Stream stream, string part, Faults faults)
    {
        (this.part, Faults) = (part, faults);
        try
        {
            reader = XmlReader.Create(
                new StreamReader(
                    stream,
                    new UTF8Encoding(encoderShouldEmitUTF8Identifier: true, throwOnInvalidBytes: true),
                    detectEncodingFromByteOrderMarks: false
                ),
                Settings
            );
        }
        catch (DecoderFallbackException e)
        {
            throw NotUtf8(part, e);
        }
    }

    internal Faults Faults { get; }

    internal string Namespace => reader.NamespaceURI;

    internal string LocalName => reader.LocalName;

    /// <summary>The part, line and column, for messages.</summary>
    internal string Place => At(((IXmlLineInfo)reader).LineNumber, ((IXmlLineInfo)reader).LinePosition);

    /// <summary>Runs a reading step; XML that is not well formed becomes an input error with its line.</summary>
    internal void Guard(Action read)
    {
        try
        {
            read();
        }
        catch (XmlException e)
        {
            throw Faults.Fatal($"{At(e.LineNumber, e.LinePosition)}: {Bare(e)}", cause: e);
        }
        catch (DecoderFallbackException e)
        {
            throw NotUtf8(Place, e);
        }
    }

    private string At(int line, int column) => FormattableString.Invariant($"{part}:{line}:{column}");

    /// <summary>What is wrong without the place, which the platform says at the end.</summary>
    private static string Bare(XmlException e)
    {
        int place = e.Message.LastIndexOf(" Line ", StringComparison.Ordinal);
        return (place > 0 ? e.Message[..place] : e.Message).TrimEnd('.');
    }

    /// <summary>Goes to the root element, which must have this name.</summary>
    internal void Root(string localName, string ns)
    {
        reader.Read();
        if (
            reader.NodeType == XmlNodeType.XmlDeclaration
            && reader.GetAttribute("encoding") is { } encoding
            && !encoding.Equals("UTF-8", StringComparison.OrdinalIgnoreCase)
        )
            Faults.Raise($"{part}: the encoding is {encoding}; 3MF allows UTF-8 only", "encodings other than UTF-8");
        reader.MoveToContent();
        if (reader.LocalName != localName || reader.NamespaceURI != ns)
            throw Faults.Fatal(
                $"{Place}: the root is <{reader.LocalName}> of namespace \"{reader.NamespaceURI}\"; expected "
                    + $"<{localName}> of \"{ns}\""
            );
    }

    /// <summary>Reads to the end of the document, so that all of it is known to be well formed.</summary>
    internal void End()
    {
        while (reader.Read()) { }
    }

    /// <summary>Calls for each child element; what the call does not read of it is passed over.</summary>
    internal void Children(Action child)
    {
        reader.MoveToElement();
        if (reader.IsEmptyElement)
            return;
        int depth = reader.Depth;
        while (reader.Read() && reader.Depth > depth)
        {
            if (reader.NodeType != XmlNodeType.Element)
                continue;
            child();
            Pass(depth + 1);
        }
    }

    /// <summary>Goes to the next attribute without a namespace; reports those that 3MF forbids.</summary>
    internal bool NextAttribute()
    {
        while (reader.MoveToNextAttribute())
        {
            if (reader.NamespaceURI.Length == 0)
                return true;
            bool language = reader.NamespaceURI == ThreeMfNames.Xml && reader.LocalName == "lang" && reader.Depth == 1;
            if (reader.NamespaceURI is ThreeMfNames.SchemaInstance or ThreeMfNames.Xml && !language)
                Faults.Raise($"{Place}: attribute {reader.Name} is not allowed in 3MF", "attributes that 3MF forbids");
        }
        return false;
    }

    /// <summary>The value of the attribute; good until the next call.</summary>
    internal ReadOnlySpan<char> Value()
    {
        int length = 0,
            got;
        while (length < value.Length && (got = reader.ReadValueChunk(value, length, value.Length - length)) > 0)
            length += got;
        if (length < value.Length)
            return value.AsSpan(0, length);
        var rest = new StringBuilder().Append(value, 0, length);
        while ((got = reader.ReadValueChunk(value, 0, value.Length)) > 0)
            rest.Append(value, 0, got);
        return rest.ToString();
    }

    /// <summary>All attributes without a namespace that are among the known names; others are noted.</summary>
    internal Dictionary<string, string> Attributes(params ReadOnlySpan<string> known)
    {
        var attributes = new Dictionary<string, string>();
        while (NextAttribute())
        {
            if (known.Contains(reader.LocalName))
                attributes[reader.LocalName] = Value().ToString();
            else
                Foreign();
        }
        reader.MoveToElement();
        return attributes;
    }

    /// <summary>Reports the current element as one that 3MF does not know.</summary>
    internal void Unknown() =>
        Faults.Raise($"{Place}: 3MF has no element here called {reader.Name}", "elements unknown to 3MF");

    /// <summary>
    /// Notes the current attribute as one that 3MF does not know: whatever it says, it moves no vertex.
    /// </summary>
    internal void Foreign() =>
        Faults.Remark($"{Place}: 3MF has no attribute {reader.Name} here", "attributes unknown to 3MF");

    /// <summary>The text of the current element.</summary>
    internal string Text()
    {
        reader.MoveToElement();
        var text = new StringBuilder();
        if (reader.IsEmptyElement)
            return "";
        int depth = reader.Depth;
        while (reader.Read() && reader.Depth > depth)
            if (
                reader.NodeType
                is XmlNodeType.Text
                    or XmlNodeType.CDATA
                    or XmlNodeType.SignificantWhitespace
                    or XmlNodeType.Whitespace
            )
                text.Append(reader.Value);
        return text.ToString();
    }

    /// <summary>The value of one attribute; empty when it is not there.</summary>
    internal string Attribute(string name) => reader.GetAttribute(name) ?? "";

    internal string? LookupNamespace(string prefix) => reader.LookupNamespace(prefix);

    public void Dispose() => reader.Dispose();

    private InputException NotUtf8(string place, DecoderFallbackException cause) =>
        Faults.Fatal($"{place}: the text is not UTF-8, the only encoding 3MF allows", cause: cause);

    private void Pass(int depth)
    {
        reader.MoveToElement();
        if (reader.NodeType == XmlNodeType.EndElement && reader.Depth == depth)
            return;
        if (reader.NodeType == XmlNodeType.Element && reader.Depth == depth && reader.IsEmptyElement)
            return;
        while (reader.Read() && !(reader.NodeType == XmlNodeType.EndElement && reader.Depth == depth)) { }
    }
}
