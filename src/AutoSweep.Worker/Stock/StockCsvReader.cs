using System.Globalization;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Files;
using nietras.SeparatedValues;

namespace AutoSweep.Worker.Stock;

/// <summary>Reads parts from CSV. Only <c>measured_pf</c> is needed; a column that the ledger has no name for is kept with the
/// part.</summary>
/// <param name="now">What counts as the date of a measurement without one.</param>
public sealed class StockCsvReader(DateTimeOffset now)
{
    private readonly List<Part> _parts = [];
    private readonly List<string> _troubles = [];

    /// <summary>Reads a file that must be whole: all of its parts, or none.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="name">The file's name, for messages.</param>
    /// <exception cref="Core.BenchFaultException">A line cannot be understood, or there is no part in it.</exception>
    public StockImport ReadAll(string text, string name)
    {
        var import = Read(text);
        var troubles = import.Parts.Count == 0 && import.Troubles.Count == 0 ? ["no part in it"] : import.Troubles;
        return troubles.Count == 0 ? import : throw CsvFile.Refuse(name, troubles, "a file without a bad line");
    }

    /// <summary>Understands a file's text.</summary>
    /// <returns>Every part, or every line that cannot be understood and why.</returns>
    public StockImport Read(string text)
    {
        using var reader = Sep.New(',').Reader(options => options with { DisableColCountCheck = true, Unescape = true,
            CultureInfo = CultureInfo.InvariantCulture })
            .FromText(text.TrimStart('\uFEFF'));
        string[] columns = [.. reader.Header.ColNames];
        if (HeaderTrouble(columns) is { } trouble)
            return new([], [trouble]);
        foreach (var row in reader)
        {
            if (row.ColCount == 1 && row[0].Span.IsEmpty)
                continue;
            if (row.ColCount != columns.Length)
                _troubles.Add($"line {row.LineNumberFrom}: {row.ColCount} cells where the header has {columns.Length}; "
                    + "quote a cell that holds a comma, and use a point as decimal mark");
            else
                Take(new(row.LineNumberFrom, columns.Zip(Cells(row)).ToDictionary(pair => pair.First, pair => pair.Second)));
        }

        return new(_troubles.Count == 0 ? _parts : [], _troubles);
    }

    private static string[] Cells(SepReader.Row row)
    {
        var cells = new string[row.ColCount];
        for (var index = 0; index < cells.Length; index++)
            cells[index] = row[index].ToString().Trim();
        return cells;
    }

    private static string? HeaderTrouble(string[] columns)
    {
        if (columns.Length == 1 && columns[0].Contains(';', StringComparison.Ordinal))
            return "line 1: the cells are separated by semicolons; save the file with commas between cells and a point as decimal mark";
        if (columns.GroupBy(column => column).FirstOrDefault(group => group.Count() > 1) is { } twice)
            return $"line 1: the column '{twice.Key}' stands twice; give each column its own name";
        return columns.Contains("measured_pf")
            ? null
            : $"line 1: no column measured_pf, found {string.Join(", ", columns)}; name the measured value in picofarads so";
    }

    private void Take(StockCsvRow row)
    {
        var part = new Part
        {
            Id = row.Text("id") ?? "",
            Measured = new(
                (long)Math.Round(row.Number("measured_pf", 1, 1e9, needed: true) ?? 0),
                row.Number("uncertainty_pf", 0, 1e8) ?? 0, row.Date("measured_on") ?? now, row.Number("dissipation", 0, 10),
                    row.Text("meter")),
            NominalPicofarads = (long?)row.Number("nominal_pf", 1, 1e9),
            ToleranceLetter = row.Word("tolerance", [.. ToleranceLetters.Percent.Keys]),
            Dielectric = row.Text("dielectric"),
            RatedVolts = row.Number("rated_v", 1, 100_000),
            Bin = row.Text("bin"),
            OtherColumns = row.Others(StockCsv.Columns),
        };
        row.Word("status", ["available"]);
        if (row.Troubles.Count == 0)
            _parts.Add(part);
        _troubles.AddRange(row.Troubles);
    }
}
