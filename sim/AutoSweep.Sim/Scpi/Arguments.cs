using System.Globalization;

namespace AutoSweep.Sim.Scpi;

/// <summary>The parameters of one message unit, read as what the command wants.</summary>
internal sealed class Arguments(IReadOnlyList<string> parameters)
{
    public int Count => parameters.Count;

    /// <summary>Allows between so many and so many parameters.</summary>
    public Arguments Expect(int least, int most)
    {
        if (Count < least || parameters.Any(parameter => parameter.Length == 0)) throw new ScpiErrorException(ScpiError.MissingParameter);
        if (Count > most) throw new ScpiErrorException(ScpiError.ParameterNotAllowed);
        return this;
    }

    public Arguments None() => Expect(0, 0);

    /// <summary>Allows no parameter, then acts.</summary>
    public void None(Action action)
    {
        None();
        action();
    }

    /// <summary>Allows no parameter, then answers.</summary>
    public T None<T>(Func<T> answer)
    {
        None();
        return answer();
    }

    /// <summary>A number or MINimum, MAXimum, DEFault.</summary>
    public double Number(int index, NumberRange range)
    {
        var text = parameters[index];
        var value = Keyword(text, range) ?? NumberText.Read(text, range.Unit);
        return value >= range.Least && value <= range.Most ? value : throw new ScpiErrorException(ScpiError.OutOfRange);
    }

    /// <summary>A number, or the default where the parameter is left out.</summary>
    public double NumberOrDefault(int index, NumberRange range) => index < Count ? Number(index, range) : range.Default;

    public int Whole(int index, NumberRange range) => (int)Math.Round(Number(index, range), MidpointRounding.AwayFromZero);

    public bool Boolean(int index)
    {
        var text = parameters[index].ToUpperInvariant();
        return text switch
        {
            "ON" => true,
            "OFF" => false,
            _ when char.IsAsciiLetter(text[0]) => throw new ScpiErrorException(ScpiError.IllegalValue),
            _ => Math.Round(NumberText.Read(text, "")) != 0,
        };
    }

    /// <summary>One of a few words, given as patterns (<c>IMMediate</c>); answers its short form.</summary>
    public string Word(int index, params string[] patterns)
    {
        var text = parameters[index].ToUpperInvariant();
        if (char.IsAsciiDigit(text[0]) || text[0] is '+' or '-' or '.') throw new ScpiErrorException(ScpiError.NumericNotAllowed);
        if (text[0] is '"' or '\'') throw new ScpiErrorException(ScpiError.StringNotAllowed);
        return patterns.Select(pattern => HeaderForms.Of(pattern).ToList())
            .FirstOrDefault(forms => forms.Contains(text))?[0] ?? throw new ScpiErrorException(ScpiError.IllegalValue);
    }

    public string Quoted(int index)
    {
        var text = parameters[index];
        return text.Length >= 2 && text[0] is '"' or '\'' && text[^1] == text[0]
            ? text[1..^1]
            : throw new ScpiErrorException(ScpiError.DataType);
    }

    public string Raw(int index) => parameters[index];

    /// <summary>What a query with MIN, MAX or DEF asks for; null for the value in force.</summary>
    public double? Limit(NumberRange range) =>
        Expect(0, 1).Count == 0 ? null : Keyword(parameters[0], range) ?? throw new ScpiErrorException(ScpiError.IllegalValue);

    private static double? Keyword(string text, NumberRange range) => text.ToUpperInvariant() switch
    {
        "MIN" or "MINIMUM" => range.Least,
        "MAX" or "MAXIMUM" => range.Most,
        "DEF" or "DEFAULT" => range.Default,
        _ => null,
    };

    /// <summary>A number as every answer writes it: NR3.</summary>
    public static string Nr3(double value) => value.ToString("+0.00000000E+00;-0.00000000E+00", CultureInfo.InvariantCulture);

    public static string Nr1(long value) => value.ToString(CultureInfo.InvariantCulture);
}
