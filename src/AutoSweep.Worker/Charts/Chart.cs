using System.Globalization;
using ScottPlot;

namespace AutoSweep.Worker.Charts;

/// <summary>What all charts have in common: white ground, thin lines, units on the axes.</summary>
public static class Chart
{
    /// <summary>An empty chart.</summary>
    /// <param name="across">What runs across, with its unit.</param>
    /// <param name="up">What runs up, with its unit.</param>
    public static Plot Empty(string across, string up)
    {
        var plot = new Plot();
        plot.FigureBackground.Color = Colors.White;
        plot.DataBackground.Color = Colors.White;
        plot.Axes.Color(ChartPalette.Ink);
        plot.Grid.MajorLineColor = ChartPalette.Grid;
        plot.Grid.MajorLineWidth = 0.5f;
        plot.Axes.Right.FrameLineStyle.Width = 0;
        plot.Axes.Top.FrameLineStyle.Width = 0;
        foreach (var axis in new IAxis[] { plot.Axes.Left, plot.Axes.Bottom })
        {
            axis.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { LabelFormatter = Label };
            axis.FrameLineStyle.Width = 0.8f;
            axis.MajorTickStyle.Width = 0.8f;
            axis.MinorTickStyle.Length = 0;
        }

        Label(plot.Axes.Bottom, across);
        Label(plot.Axes.Left, up);
        return plot;
    }

    /// <summary>A logarithmic axis: values are given as logarithms, ticks stand at 1, 2 and 5 of every decade.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="least">The least value on it, above 0.</param>
    /// <param name="most">The largest value on it.</param>
    public static void Logarithmic(IAxis axis, double least, double most)
    {
        var ticks = new ScottPlot.TickGenerators.NumericManual();
        for (var decade = (int)Math.Floor(Math.Log10(least)); decade <= Math.Ceiling(Math.Log10(most)); decade++)
        {
            foreach (var step in new[] { 1, 2, 5 })
            {
                var value = step * Math.Pow(10, decade);
                ticks.AddMajor(Math.Log10(value), Label(value));
            }
        }

        axis.TickGenerator = ticks;
    }

    private static string Label(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    private static void Label(IAxis axis, string text)
    {
        if (axis is not ScottPlot.AxisPanels.AxisBase panel)
            return;
        (panel.LabelText, panel.LabelBold, panel.LabelFontSize, panel.LabelFontColor) = (text, false, 12, ChartPalette.Ink);
        panel.TickLabelStyle.FontSize = 11;
    }
}
