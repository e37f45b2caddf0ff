using AutoSweep.Core.Curve;
using AutoSweep.Worker.Curves;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Curves;

public sealed class CurveCsvTests
{
    public static TheoryData<string, string> ReadRightly => new()
    {
        { "plain", "output,level_mv\n1,4.5\n2,4\n" },
        { "a byte-order mark", "\uFEFFoutput,level_mv\n1,4.5\n2,4\n" },
        { "Windows line ends and a blank line at the end", "output,level_mv\r\n1,4.5\r\n2,4\r\n\r\n" },
        { "no line end at the end", "output,level_mv\n1,4.5\n2,4" },
        { "semicolons with decimal commas", "output;level_mv\n1;4,5\n2;4,0\n" },
        { "semicolons with decimal points", "output;level_mv\n1;4.5\n2;4\n" },
        { "tabs", "output\tlevel_mv\n1\t4,5\n2\t4\n" },
        { "a spreadsheet's separator line", "sep=;\noutput;level_mv\n1;4,5\n2;4\n" },
        { "the unit in round brackets", "Output,Level (mV)\n1,4.5\n2,4\n" },
        { "the unit in square brackets", "Output,Level [mV rms]\n1,4.5\n2,4\n" },
        { "only the unit", "terminal,mV\n1,4.5\n2,4\n" },
        { "volts", "output,level_v\n1,0.0045\n2,0.004\n" },
        { "microvolts", "output,target uV\n1,4500\n2,4e3\n" },
        { "microvolts with a micro sign", "output,level (µV)\n1,4500\n2,4000\n" },
        { "decibels over a volt", "output,level_dBV\n1,-46.9357497\n2,-47.9588002\n" },
        { "decibels over 0.775 V", "output,level_dBu\n1,-44.7172622\n2,-45.7403127\n" },
        { "decibels over a millivolt", "output,level_dBmV\n1,13.0642503\n2,12.0411998\n" },
        { "quoted cells", "\"output\",\"level_mv\"\n\"1\",\"4.5\"\n\"2\",\"4\"\n" },
        { "any order of columns and lines", "level_mv,output\n4,2\n4.5,1\n" },
        { "blanks around cells", " output , level_mv \n 1 , 4.5\n2,4 \n" },
        { "columns that a curve has no use for", "output,expected_hz,tone_hz,level_mv,noise_mv,flags\n1,32.7,32.69,4.5,0.02,\n2,34.6,34.65,4,0.02,hum_only\n" },
        { "an output without a level", "output,level_mv\n1,4.5\n2,4\n3,\n" },
        { "empty cells at the end", "output,level_mv,,\n1,4.5,,\n2,4,,\n,,,\n" },
    };

    [Theory]
    [MemberData(nameof(ReadRightly))]
    public void A_file_is_read_rightly(string what, string text)
    {
        var import = Read(text);
        Assert.True(import.Troubles.Count == 0, $"{what}: {string.Join("; ", import.Troubles)}");
        Assert.Equal([1, 2], import.Points.Select(point => point.Output));
        Assert.Equal(4.5, import.Points[0].Millivolts, 6);
        Assert.Equal(4, import.Points[1].Millivolts, 6);
        Assert.All(import.Points, point => Assert.Equal(TargetCurve.UsualToleranceDecibels, point.ToleranceDecibels));
        Assert.Contains(import.Notes, note => note.StartsWith("no target for output 3 to 14", StringComparison.Ordinal));
    }

    public static TheoryData<string, string> Refused => new()
    {
        { "", "line 1: the file is empty; it needs a first line such as output,level_mv,tolerance_db" },
        { "output,level_mv\n", "line 2: no output has a level; write one line an output" },
        { "output,level_mv\n1,4,5\n", "line 2: 3 cells where the first line has 2; with a decimal comma, separate the cells by semicolons" },
        { "output,level_mv\n1,\"4,5\"\n", "line 2: level of output 1: '4,5' has a comma in a file whose cells are separated by commas; write a point: 4.5" },
        { "output;level_mv\n1;4,5\n2;4.5\n", "line 3: level of output 2: '4.5' has another decimal mark than the lines before; use one in the whole file" },
        { "output;level_mv\n1;1.234,5\n", "line 2: level of output 1: '1.234,5' has more than one decimal mark; write no thousands separators" },
        { "output,level_mv\n1,4.5\n2,4\n1,4.5\n", "line 4: output 1 stands in line 2 already; keep one of them" },
        { "output,level_mv\n1,4.5 mV\n", "line 2: level of output 1: '4.5 mV' is not a plain number; write digits with one decimal mark, and the unit in the first line" },
        { "output,level_mv\n1,NaN\n", "line 2: level of output 1: 'NaN' is not a plain number; write digits with one decimal mark, and the unit in the first line" },
        { "output,level_mv\n1,0\n", "line 2: level of output 1: 0 is out of range; write a number from 0.001 to 10000" },
        { "output,level_mv\n1,-3\n", "line 2: level of output 1: -3 is out of range; write a number from 0.001 to 10000" },
        { "output,level_v\n1,12\n", "line 2: level of output 1: 12 is out of range; write a number from 0.000001 to 10" },
        { "output,level_mv\n15,4\n", "line 2: {profile} has no output 15; it has 1 to 14" },
        { "output,level_mv\n1.0,4\n", "line 2: '1.0' is not an output's number; write digits only" },
        { "output,level_mv\n1\n", "line 2: 1 cells are too few for the first line's columns; fill the line up" },
        { "\n\noutput,level\n1,4\n", "line 3: the column 'level' does not say its unit; write one behind it, such as 'level_mv'; units are mV, V, uV, dB, dBV, dBu, dBmV" },
        { "\noutput,level_mv\n1,x\n", "line 3: level of output 1: 'x' is not a plain number; write digits with one decimal mark, and the unit in the first line" },
        { "output,level\n1,4\n", "line 1: the column 'level' does not say its unit; write one behind it, such as 'level_mv'; units are mV, V, uV, dB, dBV, dBu, dBmV" },
        { "output,level_mvpp\n1,4\n", "line 1: 'mvpp' is no unit of level here; units are mV, V, uV, dB, dBV, dBu, dBmV, all rms" },
        { "output,level_mv,target_db\n1,4,1\n", "line 1: the columns 'level_mv', 'target_db' both say the level; keep one of them" },
        { "output,level_mv,tolerence_db\n1,4,1\n", "line 1: the column 'tolerence_db' is not known; if 'tolerance' is meant, write it so, else give it another name" },
        { "output,level_mv,tolerance_%\n1,4,12\n", "line 1: the tolerance is in '%'; write it in dB, from 0 to 20 (12 % of a level is about 1 dB)" },
        { "output,level_mv,tolerance_db\n1,4,0\n", "line 2: tolerance of output 1: 0 is out of range; write a number from 0.1 to 20" },
        { "note,level_mv\nx,4\n", "line 1: no column for the output's number, found 'note', 'level_mv'; name the column with the output's number 'output'" },
        { "output,level_mv\n1,4.5\n2,4\uFFFD\n", "line 3: the file is not UTF-8; save it as UTF-8" },
        { "sep=;\noutput;level_mv\n1;x\n", "line 3: level of output 1: 'x' is not a plain number; write digits with one decimal mark, and the unit in the first line" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void A_file_is_refused_with_line_and_reason(string text, string trouble)
    {
        var import = Read(text);
        Assert.Equal([trouble.Replace("{profile}", Some.Profile.Name, StringComparison.Ordinal)], import.Troubles);
        Assert.Empty(import.Points);
    }

    [Fact]
    public void Every_bad_line_is_named_and_none_is_taken()
    {
        var import = Read("output,level_mv\n1,4.5\n\n2,x\n3,4\n3,4\n99,4\n");
        Assert.Equal(["line 4", "line 6", "line 7"], import.Troubles.Select(trouble => trouble.Split(':')[0]));
        Assert.Empty(import.Points);
    }

    [Fact]
    public void A_shape_in_decibels_and_its_tolerance_come_in()
    {
        var import = Read("output;level_dB;tolerance (dB)\n1;0;0,5\n2;\u22126;\n");
        Assert.Equal(new TargetPoint(1, 1, 0.5), import.Points[0]);
        // 10^(-6/20) = 0.501187, the usual table of decibels.
        Assert.Equal(0.501187, import.Points[1].Millivolts, 6);
        Assert.Equal(1, import.Points[1].ToleranceDecibels);
        Assert.Contains("a shape in dB: only differences between outputs count", import.Notes);
    }

    [Fact]
    public void An_exported_curve_reads_back_as_it_was()
    {
        var curve = TargetCurve.Of(Some.Profile).With(new(3, 4.123456, 0.5)).Without(7);
        var import = Read(CurveCsv.Text(curve));
        Assert.Empty(import.Troubles);
        Assert.Equal(curve.Points, import.Points);
    }

    [Fact]
    public void An_open_quotation_mark_is_refused_and_not_read_over_the_rest_of_the_file() =>
        Assert.NotEmpty(Read("output,level_mv\n1,\"4.5\n2,4\n").Troubles);

    [Theory]
    [InlineData(new[] { 1 }, "1")]
    [InlineData(new[] { 1, 2, 4, 5, 6, 9 }, "1, 2, 4 to 6, 9")]
    public void Numbers_are_drawn_together(int[] numbers, string text) => Assert.Equal(text, NumberList.Of(numbers));

    private static CurveCsvImport Read(string text) => new CurveCsvReader(Some.Profile).Read(text);
}
