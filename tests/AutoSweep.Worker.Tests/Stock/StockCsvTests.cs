using System.Globalization;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Stock;

public sealed class StockCsvTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Parts_come_in_with_every_cell_and_unknown_columns_go_out_again()
    {
        var import = Read("""
            shelf,id,measured_pf,uncertainty_pf,dissipation,nominal_pf,tolerance,dielectric,rated_v,bin,measured_on,meter,price
            "upper, left",A7,104512,52.5,0.0004,100000,J,polypropylene,100,red 3,2026-02-28,LCR 1,0.32
            """);

        var part = Assert.Single(import.Parts);
        Assert.Equal((104_512, 52.5, 0.0004, "LCR 1"), (part.Measured.Picofarads, part.Measured.UncertaintyPicofarads,
            part.Measured.Dissipation, part.Measured.Meter));
        Assert.Equal(("A7", 100_000, "J", "polypropylene", 100, "red 3"),
            (part.Id, part.NominalPicofarads, part.ToleranceLetter, part.Dielectric, part.RatedVolts, part.Bin));
        Assert.Equal("2026-02-28", part.Measured.At.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        var written = StockCsv.Text(StockState.Empty.Apply(new(1, Now, import.AsEvent(StockState.Empty, "file"))));
        Assert.Contains("shelf,price", written, StringComparison.Ordinal);
        Assert.Contains("\"upper, left\",0.32", written, StringComparison.Ordinal);
        Assert.Equivalent(part, Assert.Single(Read(written).Parts));
    }

    [Fact]
    public void A_value_is_all_that_is_needed_and_ids_are_given_in_order()
    {
        var taken = Read("measured_pf\n1000\n2000\n").AsEvent(StockState.Empty.Apply(new(1, Now, Some.TakenIn("P00041"))), "file");

        Assert.Equal(["P00042", "P00043"], taken.Parts.Select(part => part.Id));
        Assert.All(taken.Parts, part => Assert.Equal(Now, part.Measured.At));
    }

    [Theory]
    [InlineData("measured_pf,tolerance\n\"104,5\",J\n", "line 2, measured_pf: '104,5' has a comma; write a point as decimal mark: 104.5")]
    [InlineData("measured_pf\n104.5n\n",
        "line 2, measured_pf: '104.5n' is not a plain number; write it in picofarads without a unit: 104500")]
    [InlineData("measured_pf\n1 000\n",
        "line 2, measured_pf: '1 000' is not a plain number; write digits, with a point as decimal mark and no unit")]
    [InlineData("measured_pf\n-5\n", "line 2, measured_pf: -5 is out of range; write a number from 1 to 1000000000")]
    [InlineData("id,measured_pf\nA1,\n", "line 2, measured_pf: the cell is empty; write a number from 1 to 1000000000")]
    [InlineData("measured_pf,tolerance\n100,X\n",
        "line 2, tolerance: 'X'; write one of B C D F G H J K M N Q S T Z, or leave the cell empty")]
    [InlineData("measured_pf,measured_on\n100,24.11.2026\n", "line 2, measured_on: '24.11.2026' is not a date; write it as 2026-11-24")]
    [InlineData("measured_pf,status\n100,fitted\n", "line 2, status: 'fitted'; write available, or leave the cell empty")]
    [InlineData("measured_pf,id\n100,A1,surplus\n",
        "line 2: 3 cells where the header has 2; quote a cell that holds a comma, and use a point as decimal mark")]
    [InlineData("measured_pf;id\n100;A1\n",
        "line 1: the cells are separated by semicolons; save the file with commas between cells and a point as decimal mark")]
    [InlineData("value,id\n100,A1\n", "line 1: no column measured_pf, found value, id; name the measured value in picofarads so")]
    public void A_bad_line_is_named_with_what_to_write_instead(string text, string trouble)
    {
        var import = Read(text);

        Assert.Equal([trouble], import.Troubles);
        Assert.Empty(import.Parts);
    }

    [Fact]
    public void One_bad_line_keeps_every_line_out_and_all_bad_lines_are_named()
    {
        var import = Read("measured_pf\n100\n\n1,5\n200\nx\n");

        Assert.Empty(import.Parts);
        Assert.Equal(2, import.Troubles.Count);
        Assert.StartsWith("line 6, measured_pf: 'x'", import.Troubles[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_culture_with_a_decimal_comma_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
        try
        {
            Assert.Equal(0.5, Read("measured_pf,uncertainty_pf\n1000,0.5\n").Parts.Single().Measured.UncertaintyPicofarads);
            Assert.Contains(",0.5,", StockCsv.Text(StockState.Empty.Apply(new(1, Now,
                Read("measured_pf,uncertainty_pf\n1000,0.5\n").AsEvent(StockState.Empty, "file")))), StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static StockImport Read(string text) => new StockCsvReader(Now).Read(text);
}
