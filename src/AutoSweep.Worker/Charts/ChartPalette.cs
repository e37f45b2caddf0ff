using AutoSweep.Core.Curve;
using ScottPlot;

namespace AutoSweep.Worker.Charts;

/// <summary>The look of a series: told apart by marker and dash, and by colour only on top of that.</summary>
/// <param name="Color">The ink.</param>
/// <param name="Marker">The marker of each point.</param>
/// <param name="Line">The dash.</param>
/// <param name="Width">The line's width in pixels.</param>
public sealed record ChartPalette(Color Color, MarkerShape Marker, LinePattern Line, float Width)
{
    /// <summary>Text and axes.</summary>
    public static Color Ink { get; } = Color.FromHex("#222222");

    /// <summary>Thin lines behind the data.</summary>
    public static Color Grid { get; } = Color.FromHex("#dddddd");

    /// <summary>The tolerance band: light, for the sake of ink.</summary>
    public static Color Band { get; } = Color.FromHex("#ececec");

    /// <summary>The target itself.</summary>
    public static Color Target { get; } = Color.FromHex("#777777");

    /// <summary>A fitted curve.</summary>
    public static Color Fit { get; } = Color.FromHex("#0072b2");

    /// <summary>The look of a level curve. The colours are two of the eight that colour-blind people tell apart (Okabe and Ito, 2008), and black.</summary>
    public static ChartPalette Of(CurveStand stand) => stand switch
    {
        CurveStand.AsFound => new(Color.FromHex("#d55e00"), MarkerShape.OpenCircle, LinePattern.Dotted, 1),
        CurveStand.AfterRecap => new(Color.FromHex("#0072b2"), MarkerShape.OpenTriangleUp, LinePattern.Dashed, 1),
        _ => new(Color.FromHex("#111111"), MarkerShape.FilledCircle, LinePattern.Solid, 1.2f),
    };
}
