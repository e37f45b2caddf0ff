using System.Globalization;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Stock;

/// <summary>One row of an imported file, and what is wrong with it.</summary>
internal sealed class StockCsvRow(int line, IReadOnlyDictionary<string, string> cells)
{
    private readonly List<string> _troubles = [];

    /// <summary>What is wrong, each with the line and the column.</summary>
    public IReadOnlyList<string> Troubles => _troubles;

    /// <summary>A text; none for an empty cell.</summary>
    public string? Text(string column) => cells.GetValueOrDefault(column) is { Length: > 0 } text ? text : null;

    /// <summary>A number; none for an empty cell or one that is noted as wrong.</summary>
    public double? Number(string column, double least, double most, bool needed = false)
    {
        if (Text(column) is not { } text)
            return needed ? Note(column, "the cell is empty", $"write a number from {Show(least)} to {Show(most)}") : null;
        if (text.Contains(',', StringComparison.Ordinal))
            return Note(column, $"'{text}' has a comma", $"write a point as decimal mark: {text.Replace(',', '.')}");
        if (!double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture, out var value))
            return Note(column, $"'{text}' is not a plain number", Instead(column, text));
        return value >= least && value <= most ? value : Note(column, $"{text} is out of range",
            $"write a number from {Show(least)} to {Show(most)}");
    }

    /// <summary>One of some words; none for an empty cell or one that is noted as wrong.</summary>
    public string? Word(string column, IReadOnlyList<string> words)
    {
        if (Text(column) is not { } text || words.Contains(text))
            return Text(column);
        Note(column, $"'{text}'", $"write {(words.Count == 1 ? words[0] : "one of " + string.Join(' ', words))}, or leave the cell empty");
        return null;
    }

    /// <summary>A date, with or without a time (ISO 8601); none for an empty cell or one that is noted as wrong.</summary>
    public DateTimeOffset? Date(string column)
    {
        if (Text(column) is not { } text)
            return null;
        string[] forms = ["yyyy-MM-dd", "yyyy-MM-ddTHH:mmK", "yyyy-MM-ddTHH:mm:ssK"];
        if (DateTimeOffset.TryParseExact(text, forms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var date))
            return date;
        Note(column, $"'{text}' is not a date", "write it as 2026-11-24");
        return null;
    }

    /// <summary>The cells of columns that have no name here; none where there are none.</summary>
    public IReadOnlyDictionary<string, string>? Others(IReadOnlyList<string> known)
    {
        var others = cells.Where(cell => !known.Contains(cell.Key) && cell.Value.Length > 0)
            .ToDictionary(cell => cell.Key, cell => cell.Value);
        return others.Count > 0 ? others : null;
    }

    // A unit behind the number is the usual reason; the message then says the very number to write.
    private static string Instead(string column, string text) => column.EndsWith("_pf", StringComparison.Ordinal)
        && TypedCapacitance.Picofarads(text) is { } value
        ? $"write it in picofarads without a unit: {Show(value)}"
        : "write digits, with a point as decimal mark and no unit";

    private double? Note(string column, string found, string whatToDo)
    {
        _troubles.Add($"line {line}, {column}: {found}; {whatToDo}");
        return null;
    }

    private static string Show(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);
}
