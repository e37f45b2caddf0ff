using System.Globalization;
using AutoSweep.Core.Decades;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.ByHand;

/// <summary>What to dial, in words that are read from a metre away.</summary>
public static class DialWords
{
    /// <summary>Every dial with its position; those to be turned are marked.</summary>
    /// <param name="box">The box.</param>
    /// <param name="setting">Where the dials shall stand.</param>
    /// <param name="now">Where they stand; none where nobody has said so.</param>
    public static string Dials(DecadeBox box, DialSetting setting, DialSetting? now) => string.Join("    ", setting.Positions.Select((position, dial) =>
        $"x {Step(box.Decades[dial])}: {position}{(now is not null && now.Positions[dial] != position ? " <" : "")}"));

    /// <summary>Every dial with its position, for a screen that shows them large.</summary>
    /// <param name="box">The box.</param>
    /// <param name="setting">Where the dials shall stand.</param>
    /// <param name="now">Where they stand; none where nobody has said so.</param>
    public static IReadOnlyList<ShownDial> Shown(DecadeBox box, DialSetting setting, DialSetting? now) => [.. setting.Positions.Select((position, dial) =>
        new ShownDial(Step(box.Decades[dial]), position, now?.Positions[dial] != position))];

    /// <summary>One step of a dial, as it is printed on boxes: <c>100 nF</c>, <c>100 pF</c>.</summary>
    public static string Step(Decade decade) => decade.StepPicofarads switch
    {
        >= 1_000_000 => Text(decade.StepPicofarads / 1e6, "uF"),
        >= 1000 => Text(decade.StepPicofarads / 1e3, "nF"),
        _ => Text(decade.StepPicofarads, "pF"),
    };

    /// <summary>What the dials add up to as they are printed.</summary>
    public static Capacitance Printed(DecadeBox box, DialSetting setting) =>
        new(setting.Positions.Select((position, dial) => position * box.Decades[dial].StepPicofarads).Sum());

    private static string Text(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:0.###} {unit}");
}
