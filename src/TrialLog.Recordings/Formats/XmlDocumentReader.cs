using System.Globalization;
using System.Text;
using System.Xml;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Recordings.Files;

namespace TrialLog.Recordings.Formats;

/// <summary>
/// Walks an XML file element by element with nothing fetched, nothing expanded and nothing kept: document type
/// declarations (and so entities) are refused, and no text longer than a number or a time is ever held.
/// </summary>
internal sealed class XmlDocumentReader : IDisposable
{
    // No start tag of these formats comes near; a longer one would make the parser hold it whole.
    private const int LongestTag = 256 * 1024;

    private readonly XmlReader reader;
    private readonly char[] text = new char[64];
    private bool alreadyThere;

    private XmlDocumentReader(XmlReader reader) => this.reader = reader;

    /// <summary>
    /// Local name of the element that was just entered or left; namespaces are not looked at, since devices differ in them.
    /// </summary>
    public string Name => reader.LocalName;

    /// <summary>Whether an element was just entered (true) or left (false).</summary>
    public bool Entered => reader.NodeType == XmlNodeType.Element;

    /// <summary>The local name of the document's first element.</summary>
    /// <exception cref="RecordingException">It is not sound XML, or refused.</exception>
    public static string RootName(ArraySegment<byte> bytes) => Walk(bytes, xml => xml.Next() ? xml.Name : "");

    /// <summary>Opens the document, lets <paramref name="read"/> walk it, and turns what is wrong with the XML into one sentence.</summary>
    /// <exception cref="RecordingException">It is not sound XML, or refused.</exception>
    public static T Walk<T>(ArraySegment<byte> bytes, Func<XmlDocumentReader, T> read)
    {
        RefuseEndlessTags(bytes);
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            IgnoreWhitespace = true,
            MaxCharactersInDocument = FileBytes.Most,
        };
        try
        {
            ArraySegment<byte> document = WithoutBlanksBefore(bytes);
            using var stream = new MemoryStream(document.Array!, document.Offset, document.Count, writable: false);
            var names = new NameTable();
            var context = new XmlParserContext(names, new AnyPrefix(names), null, XmlSpace.None);
            using var reader = new XmlDocumentReader(XmlReader.Create(stream, settings, context));
            return read(reader);
        }
        catch (XmlException e) when (e.Message.Contains("DTD", StringComparison.Ordinal))
        {
            throw new RecordingException(
                "the file declares a document type or entities, which no recording needs and which can do harm; it was refused.", e);
        }
        catch (XmlException e)
        {
            throw new RecordingException(
                $"the file is cut off or damaged at line {e.LineNumber}; copy it again from the watch or its service.", e);
        }
        catch (Exception e) when (e is DecoderFallbackException or ArgumentException or NotSupportedException)
        {
            throw new RecordingException("the file is in an unknown character encoding; export it again as UTF-8.", e);
        }
    }

    /// <summary>Goes on to the next start or end of an element; false at the end of the document.</summary>
    public bool Next()
    {
        while (alreadyThere || reader.Read())
        {
            alreadyThere = false;
            if (reader.NodeType is XmlNodeType.Element or XmlNodeType.EndElement)
                return true;
        }

        return false;
    }

    /// <summary>Whether the element just entered has neither text nor children, so that it will not be left.</summary>
    public bool IsEmpty => reader.IsEmptyElement;

    /// <summary>An attribute of the element just entered.</summary>
    public string? Attribute(string name) => reader.GetAttribute(name);

    /// <summary>A number from an attribute of the element just entered; NaN where it is none.</summary>
    public double NumberAttribute(string name) => Number(reader.GetAttribute(name));

    /// <summary>The number inside the element just entered; NaN where there is none.</summary>
    public double Number() => Number(Text());

    /// <summary>The text right inside the element just entered, up to 64 characters; empty where there is none or more.</summary>
    public ReadOnlySpan<char> Text()
    {
        if (reader.IsEmptyElement || !reader.Read())
            return [];
        if (reader.NodeType is not (XmlNodeType.Text or XmlNodeType.CDATA))
        {
            alreadyThere = true;
            return [];
        }

        int filled = 0;
        while (filled < text.Length)
        {
            int read = reader.ReadValueChunk(text, filled, text.Length - filled);
            if (read == 0)
                return text.AsSpan(0, filled);
            filled += read;
        }

        return [];
    }

    // Some devices write blank lines before the declaration, which XML forbids.
    private static ArraySegment<byte> WithoutBlanksBefore(ArraySegment<byte> bytes)
    {
        int mark = bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? 3 : 0, at = mark;
        while (at < bytes.Count && bytes[at] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
            at++;
        return at > mark ? bytes[at..] : bytes;
    }

    // Some devices use a prefix that they never declare; the elements are known by their local names anyway.
    private sealed class AnyPrefix(XmlNameTable names) : XmlNamespaceManager(names)
    {
        public override string? LookupNamespace(string prefix) =>
            base.LookupNamespace(prefix) ?? (prefix.Length > 0 ? "urn:undeclared" : null);
    }

    private static double Number(ReadOnlySpan<char> text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? number
            : double.NaN;

    private static void RefuseEndlessTags(ReadOnlySpan<byte> bytes)
    {
        while (bytes.Length > 0)
        {
            int open = bytes.IndexOf((byte)'<');
            if (open < 0)
                return;
            bytes = bytes[open..];
            int close = bytes.IndexOf((byte)'>');
            if ((close < 0 ? bytes.Length : close) > LongestTag)
                throw new RecordingException("the file holds an element of absurd size; it was refused.");
            if (close < 0)
                return;
            bytes = bytes[(close + 1)..];
        }
    }

    /// <inheritdoc/>
    public void Dispose() => reader.Dispose();
}
