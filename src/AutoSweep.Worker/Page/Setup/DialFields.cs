using System.Globalization;
using AutoSweep.Core.Decades;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>One dial of a decade box as a person types it.</summary>
public sealed class DialFields
{
    // Twenty positions of twelve letters each.
    private const int LongestList = 260;

    /// <summary>What one step adds, such as <c>100n</c>.</summary>
    public string Step { get; set; } = "";

    /// <summary>The highest position.</summary>
    public string Steps { get; set; } = "10";

    /// <summary>What positions 1, 2, … measured, with blanks between; empty where nobody measured them.</summary>
    public string Measured { get; set; } = "";

    /// <summary>The fields of a dial.</summary>
    public static DialFields Of(Decade dial) => new()
    {
        Step = Text(dial.StepPicofarads),
        Steps = dial.Steps.ToString(CultureInfo.InvariantCulture),
        Measured = string.Join(' ', (dial.MeasuredPicofarads ?? []).Select(Text)),
    };

    /// <summary>The dial.</summary>
    /// <param name="number">Which dial it is, from 1, for messages.</param>
    /// <exception cref="Core.BenchFaultException">A field cannot be understood.</exception>
    public Decade Read(int number)
    {
        var name = FormattableString.Invariant($"Dial {number}");
        return new()
        {
            StepPicofarads = TypedField.CapacitanceOrNone(Step, $"{name}, one step")?.Picofarads
                ?? throw TypedField.Refuse("", $"{name}, one step", TypedCapacitance.Expected),
            Steps = TypedField.WholeOrNone(Steps, $"{name}, highest position", 1, 20) ?? 10,
            MeasuredPicofarads = TypedField.TextOrNone(Measured, $"{name}, measured positions", LongestList) is { } measured
                ? [.. measured.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(one => Value(one, name))] : null,
        };
    }

    // Not through a whole picofarad: the steps of a small dial were measured more finely.
    private static double Value(string typed, string name) => TypedCapacitance.Picofarads(typed)
        ?? throw TypedField.Refuse(typed, $"{name}, measured positions", TypedCapacitance.Expected + ", a blank between two values");

    private static string Text(double picofarads) => picofarads switch
    {
        >= 1e6 => TypedField.Shown(picofarads / 1e6) + "u",
        >= 1e3 => TypedField.Shown(picofarads / 1e3) + "n",
        _ => TypedField.Shown(picofarads) + "p",
    };

    private static string Text(long picofarads) => Text((double)picofarads);
}
