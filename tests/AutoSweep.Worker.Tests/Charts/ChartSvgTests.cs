using System.Xml.Linq;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Charts;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Charts;

public sealed class ChartSvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Text_stays_text_in_whatever_font_the_reader_has()
    {
        var texts = LevelChart().Descendants(Svg + "text").ToList();

        Assert.Contains(texts, text => text.Value == "level (mV rms)");
        Assert.Contains(texts, text => text.Value == "output");
        Assert.All(texts, text =>
        {
            Assert.Equal(ChartSvg.Fonts, text.Attribute("font-family")!.Value);
            Assert.Equal("0", text.Attribute("x")!.Value);
            Assert.Contains(text.Attribute("text-anchor")!.Value, new[] { "start", "middle", "end" });
        });
    }

    [Fact]
    public void A_chart_says_what_it_shows_to_those_who_hear_the_page()
    {
        var chart = LevelChart();

        var title = chart.Element(Svg + "title")!;
        Assert.Equal(chart.Attribute("aria-labelledby")!.Value, title.Attribute("id")!.Value);
        Assert.Equal("img", chart.Attribute("role")!.Value);
        Assert.NotEmpty(title.Value);
    }

    [Fact]
    public void Charts_of_one_page_share_no_names()
    {
        using var job = new RecappedJob();
        var charts = ReportCharts.Of(job.Reading.State);

        var ids = charts.Sweeps.Values.Append(charts.Levels!).Append(charts.Deviations!)
            .SelectMany(svg => XElement.Parse(svg).DescendantsAndSelf().Attributes("id")).Select(id => id.Value).ToList();

        Assert.True(ids.Count > 10);
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Fact]
    public void The_curves_are_told_apart_by_marker_and_dash_without_colour()
    {
        var looks = Enum.GetValues<CurveStand>().Select(ChartPalette.Of).ToList();

        Assert.Equal(looks.Count, looks.Select(look => look.Marker).Distinct().Count());
        Assert.Equal(looks.Count, looks.Select(look => look.Line.Name).Distinct().Count());
    }

    [Fact]
    public void The_curve_through_a_sweep_peaks_where_the_sweep_says_and_is_3_decibels_down_a_half_width_away()
    {
        var swept = Some.Swept(9) with { Law = ResponseLaw.Shunt };

        var curve = PeakChart.CurveOf(swept)!;

        var (peak, half) = (swept.PeakPicofarads!.Value, (long)Math.Round(swept.HalfWidthPicofarads!.Value));
        Assert.Equal(swept.PeakMillivolts!.Value, curve.LevelAt(new(peak)).Millivolts, 3);
        Assert.Equal(-3.01, curve.LevelAt(new(peak + half)).DecibelsAbove(curve.LevelAt(new(peak))), 2);
    }

    [Fact]
    public void A_trap_gets_no_curve_because_the_journal_does_not_keep_its_place() =>
        Assert.Null(PeakChart.CurveOf(Some.Swept(9) with { Law = ResponseLaw.General }));

    private static XElement LevelChart()
    {
        using var job = new RecappedJob();
        return XElement.Parse(ReportCharts.Of(job.Reading.State).Levels!);
    }
}
