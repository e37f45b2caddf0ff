using System.Globalization;
using System.IO.Hashing;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AutoSweep.Core.Journal;

/// <summary>The text form of an entry: one JSON object on one line that ends in the CRC-32 of all that stands before it.</summary>
/// <remarks>CRC-32 as in ISO/IEC/IEEE 8802-3 (and ISO 3309), lower-case hexadecimal, over the UTF-8 bytes of the object without the
/// checksum.</remarks>
public static class ChecksummedLine
{
    private const string ChecksumField = ",\"crc\":\"";
    private const int ChecksumLength = 8 + 2; // eight digits, then the quote and the brace

    /// <summary>The JSON settings of the file format: camelCase, names of enumerations, NaN never.</summary>
    public static JsonSerializerOptions Json { get; } = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    };

    /// <summary>The line of an entry, without the line end.</summary>
    public static string Write<TEntry>(TEntry entry)
        where TEntry : class, INumberedEntry
    {
        var body = JsonSerializer.Serialize(entry, Json)[..^1];
        return $"{body}{ChecksumField}{Checksum(body)}\"}}";
    }

    /// <summary>Reads a line back.</summary>
    /// <param name="line">The line, without the line end.</param>
    /// <param name="entry">The entry, when the line can be trusted.</param>
    /// <param name="trouble">What is wrong with the line, when it cannot.</param>
    public static bool TryRead<TEntry>(string line, out TEntry? entry, out string trouble)
        where TEntry : class, INumberedEntry
    {
        entry = null;
        var bodyLength = line.Length - ChecksumLength - ChecksumField.Length;
        if (bodyLength <= 0 || !line.AsSpan(bodyLength).StartsWith(ChecksumField) || !line.EndsWith("\"}", StringComparison.Ordinal))
            return Refuse("it does not end in a checksum", out trouble);
        var body = line[..bodyLength];
        if (!line.AsSpan(bodyLength + ChecksumField.Length, 8).SequenceEqual(Checksum(body)))
            return Refuse("its checksum does not fit its text", out trouble);
        return TryParse(body + "}", out entry, out trouble);
    }

    private static bool TryParse<TEntry>(string json, out TEntry? entry, out string trouble)
        where TEntry : class, INumberedEntry
    {
        entry = null;
        try
        {
            entry = JsonSerializer.Deserialize<TEntry>(json, Json);
            trouble = "";
            return entry is { IsWhole: true } || Refuse("it is empty", out trouble);
        }
        catch (JsonException fault)
        {
            return Refuse($"a newer program may have written it ({fault.Message})", out trouble);
        }
    }

    private static bool Refuse(string why, out string trouble)
    {
        trouble = why;
        return false;
    }

    private static string Checksum(string body) => Crc32.HashToUInt32(Encoding.UTF8.GetBytes(body))
        .ToString("x8", CultureInfo.InvariantCulture);
}
