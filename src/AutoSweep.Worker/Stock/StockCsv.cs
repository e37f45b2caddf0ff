using System.Globalization;
using AutoSweep.Core.Stock;
using nietras.SeparatedValues;

namespace AutoSweep.Worker.Stock;

/// <summary>The stock as CSV: one row a part, its own columns first, then those that came with an imported file.</summary>
public static class StockCsv
{
    /// <summary>The columns that the ledger has a name for, in the order of an export. The header is fixed for scripts.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "id", "measured_pf", "uncertainty_pf", "dissipation", "nominal_pf", "tolerance", "dielectric", "rated_v", "bin", "measured_on",
            "meter", "status", "job", "output",
    ];

    /// <summary>The file's text. Numbers use a point whatever the machine's culture; what is not known is an empty cell.</summary>
    public static string Text(StockState state)
    {
        var bins = state.Bins();
        string[] others = [.. state.Parts.Values.SelectMany(part => part.OtherColumns?.Keys ?? []).Distinct()];
        using var writer = Sep.New(',').Writer(options => options with { CultureInfo = CultureInfo.InvariantCulture, Escape = true })
            .ToText();
        writer.Header.Add([.. Columns, .. others]);
        foreach (var part in state.Parts.Values)
        {
            using var row = writer.NewRow();
            foreach (var (column, cell) in Columns.Zip(Cells(part, bins)))
                row[column].Set(cell);
            foreach (var other in others)
                row[other].Set(part.OtherColumns?.GetValueOrDefault(other) ?? "");
        }

        return writer.ToString();
    }

    private static string[] Cells(Part part, BinPlan bins) =>
    [
        part.Id, Number(part.Measured.Picofarads), Number(part.Measured.UncertaintyPicofarads), Number(part.Measured.Dissipation),
            Number(part.NominalPicofarads),
        part.ToleranceLetter ?? "", part.Dielectric ?? "", Number(part.RatedVolts), part.Bin ?? bins.BinOf(part.Measured.Picofarads),
        part.Measured.At.ToString("yyyy-MM-ddTHH:mm:ssK", CultureInfo.InvariantCulture), part.Measured.Meter ?? "",
        Status(part.Status), part.Place?.Job ?? "", Number(part.Place?.Output),
    ];

    /// <summary>A status' name in files.</summary>
    public static string Status(PartStatus status) => status switch
    {
        PartStatus.Available => "available",
        PartStatus.Reserved => "reserved",
        PartStatus.Fitted => "fitted",
        _ => "scrapped",
    };

    private static string Number(double? value) => value?.ToString("0.######", CultureInfo.InvariantCulture) ?? "";
}
