using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace AutoSweep.Core.StrictJson;

/// <summary>Checks one value of a file: its kind, its words, its range.</summary>
internal static class JsonLeaf
{
    private const int LongestQuote = 40;

    /// <summary>What is wrong with a value, or none. A type with a converter of its own is left to the serializer.</summary>
    public static JsonFieldFault? Fault(JsonElement element, Type type, JsonPropertyInfo? property, string path)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type.IsEnum)
            return Word(element, type, path);
        if (type == typeof(DateOnly))
            return Day(element, path);
        if (Expected(element, type) is { } expected)
            return WrongKind(element, expected, path);
        return element.ValueKind == JsonValueKind.Number ? OutOfRange(element, property, path) : null;
    }

    /// <summary>A value of another kind than the field wants.</summary>
    public static JsonFieldFault WrongKind(JsonElement element, string expected, string path) =>
        new(path, Shown(element), expected, "Correct the value; numbers stand without quotes and with a decimal point.");

    // What the type wants, when the value is not that.
    private static string? Expected(JsonElement element, Type type) => Type.GetTypeCode(type) switch
    {
        TypeCode.String when element.ValueKind != JsonValueKind.String => "a text in quotes",
        TypeCode.Boolean when element.ValueKind is not (JsonValueKind.True or JsonValueKind.False) => "true or false",
        TypeCode.Int32 when element.ValueKind != JsonValueKind.Number || !element.TryGetInt32(out _) => "a whole number",
        TypeCode.Int64 when element.ValueKind != JsonValueKind.Number || !element.TryGetInt64(out _) => "a whole number",
        TypeCode.Double when element.ValueKind != JsonValueKind.Number || !double.IsFinite(element.GetDouble()) => "a number",
        _ => null,
    };

    // The extended format of a calendar date (ISO 8601-1, 5.2.2.1): the only one that the serializer takes.
    private static JsonFieldFault? Day(JsonElement element, string path) =>
        element.ValueKind == JsonValueKind.String
        && DateOnly.TryParseExact(element.GetString(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _) ? null
        : new(path, Shown(element), "a day in quotes, such as \"2026-03-01\"", "Write year, month and day in this order.");

    private static JsonFieldFault? Word(JsonElement element, Type type, string path)
    {
        var words = Enum.GetNames(type).Select(JsonNamingPolicy.CamelCase.ConvertName).ToList();
        var found = element.ValueKind == JsonValueKind.String ? element.GetString()! : null;
        if (found is not null && words.Contains(found))
            return null;
        var nearest = found is null ? null : NearestName.To(found, words);
        return new(path, Shown(element), $"one of \"{string.Join("\", \"", words)}\"",
            nearest is null ? "Write one of these words." : $"Write \"{nearest}\", if that was meant.");
    }

    private static JsonFieldFault? OutOfRange(JsonElement element, JsonPropertyInfo? property, string path)
    {
        if (RangeOf(property) is not { } range)
            return null;
        var (least, most) = Limits(range);
        return element.GetDouble() >= least && element.GetDouble() <= most ? null
            : new(path, Shown(element),
                string.Create(CultureInfo.InvariantCulture, $"a number from {least} to {most}"), "Correct the value.");
    }

    /// <summary>The limits of a field, or none.</summary>
    public static RangeAttribute? RangeOf(JsonPropertyInfo? property) =>
        property?.AttributeProvider?.GetCustomAttributes(typeof(RangeAttribute), true).OfType<RangeAttribute>().FirstOrDefault();

    /// <summary>Both limits as numbers.</summary>
    public static (double Least, double Most) Limits(RangeAttribute range) =>
        (Convert.ToDouble(range.Minimum, CultureInfo.InvariantCulture), Convert.ToDouble(range.Maximum, CultureInfo.InvariantCulture));

    private static string Shown(JsonElement element)
    {
        var raw = element.GetRawText();
        return element.ValueKind switch
        {
            JsonValueKind.Object => "an object in braces { }",
            JsonValueKind.Array => "a list in brackets [ ]",
            _ => raw.Length <= LongestQuote ? raw : raw[..LongestQuote] + "…",
        };
    }
}
