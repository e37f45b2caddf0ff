using System.Globalization;
using System.Text.Json;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Tests.Support;

/// <summary>Equal temperament on the standard tuning frequency of ISO 16, A4 = 440 Hz.</summary>
/// <remarks>Read from tests/Reference/equal_temperament.json.</remarks>
internal static class EqualTemperament
{
    // Output 1 of the classic generator is C1, MIDI note 24 (scientific pitch).
    private const int MidiOfOutputZero = 23;

    private static readonly Dictionary<int, double> HertzByMidi = Read();

    public static Frequency OfOutput(int number) => new(HertzByMidi[number + MidiOfOutputZero]);

    private static Dictionary<int, double> Read()
    {
        using var document = JsonDocument.Parse(Repository.Text("tests/Reference/equal_temperament.json"));
        return document.RootElement.GetProperty("rows").EnumerateArray().ToDictionary(
            row => row.GetProperty("midi").GetInt32(),
            row => double.Parse(row.GetProperty("hz").GetString()!, CultureInfo.InvariantCulture));
    }
}
