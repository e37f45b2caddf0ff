using System.Globalization;
using AutoSweep.Core.Magnets;

namespace AutoSweep.Worker.Levelling;

/// <summary>The words for moves and endings.</summary>
public static class MagnetWords
{
    // What a hand calls the smallest moves (no source): a hair is some seven hundredths of a millimetre.
    private const double Hair = 0.07;

    /// <summary>The order for a meter's display of twelve places: <c>61 OUT 0.300</c>.</summary>
    public static string Short(int output, MagnetMove order) =>
        string.Create(CultureInfo.InvariantCulture, $"{output} {Name(order.Direction)} {order.Millimetres:0.000}");

    /// <summary>The order in words.</summary>
    public static string Order(int output, double decibels, GuidanceStep.Move move) => string.Create(CultureInfo.InvariantCulture,
        $"Output {output}: {Math.Abs(decibels):0.0} dB too {(decibels > 0 ? "loud" : "soft")}. ")
        + string.Create(CultureInfo.InvariantCulture, $"Magnet {Name(move.Order.Direction)} {move.Order.Millimetres:0.000} mm ({Feel(move)}), ")
        + (move.Order.Direction == MoveDirection.Out
            ? string.Create(CultureInfo.InvariantCulture, $"{move.Order.OvershootMillimetres:0.00} mm further and back, lock it.")
            : "straight and gently, lock it. It must not touch.");

    /// <summary>Which way, as it is written large.</summary>
    public static string Name(MoveDirection direction) => direction == MoveDirection.Out ? "OUT" : "IN";

    /// <summary>An ending in words.</summary>
    public static string Ending(GuidanceEnding ending) => ending switch
    {
        GuidanceEnding.InBand => "in its band",
        GuidanceEnding.NearContact => "left: further in than the known gap allows. Measure its gap with a feeler gauge and say it",
        GuidanceEnding.NoEffect => "left: moving the magnet is not heard. Is it this output's, is it stuck?",
        GuidanceEnding.WrongWay => "left: the level went the wrong way. Another output's magnet, or in for out? Look before the wheel is touched",
        GuidanceEnding.Unsteady => "left: the level does not stand still",
        GuidanceEnding.BudgetSpent => "left: enough moves for one magnet",
        _ => "left as it is",
    };

    private static string Feel(GuidanceStep.Move move) => move.TimesLast switch
    {
        null when move.Order.Millimetres < Hair => "less than a hair",
        null => "the first: it teaches the rest",
        > 1.5 and var times => string.Create(CultureInfo.InvariantCulture, $"{times:0.0} times the last move"),
        > 0.8 => "as much as the last move",
        > 0.6 => "two thirds of the last move",
        > 0.42 => "half of the last move",
        > 0.29 => "a third of the last move",
        > 0.2 => "a quarter of the last move",
        _ => "the lightest tap",
    };
}
