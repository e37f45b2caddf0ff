using System.Globalization;
using System.Text.Json;

namespace AutoSweep.Core.Tests.Support;

/// <summary>One row of tests/Reference/tonewheel_frequencies.json: exact tone, distance from equal temperament.</summary>
public sealed record PublishedTone(int Number, double Numerator, double Denominator, double Cents, double? VariantHertz)
{
    /// <summary>All 91, from the sources that the file names; frequencies computed there with exact fractions.</summary>
    public static IReadOnlyList<PublishedTone> All { get; } = Read();

    public double Hertz => Numerator / Denominator;

    private static List<PublishedTone> Read()
    {
        using var document = JsonDocument.Parse(Repository.Text("tests/Reference/tonewheel_frequencies.json"));
        return [.. document.RootElement.GetProperty("rows").EnumerateArray().Select(Row)];
    }

    private static PublishedTone Row(JsonElement row)
    {
        var exact = row.GetProperty("frequency_exact").GetString()!.Split('/');
        return new(row.GetProperty("number").GetInt32(), Parsed(exact[0]), Parsed(exact[1]),
            row.GetProperty("cents").GetDouble(), Optional(row, "variant_69_67_hz"));
    }

    private static double Parsed(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static double? Optional(JsonElement row, string name) => row.TryGetProperty(name, out var value) ? value.GetDouble() : null;
}
