using System.Globalization;
using System.Text.RegularExpressions;

namespace AutoSweep.Core.StrictJson;

/// <summary>The place of a field in a file, as messages write it: <c>outputs[3].gearTrain</c>, <c>gearTrains["quill 1"]</c>.</summary>
public static partial class JsonFieldPath
{
    /// <summary>The whole file.</summary>
    public const string Root = "";

    /// <summary>A field of the object at a path.</summary>
    public static string Field(string path, string name) =>
        !PlainName().IsMatch(name) ? $"{path}[\"{name}\"]" : path.Length == 0 ? name : $"{path}.{name}";

    /// <summary>An item of the list at a path.</summary>
    /// <param name="path">The list.</param>
    /// <param name="index">Its item, counted from 0.</param>
    public static string Item(string path, int index) => string.Create(CultureInfo.InvariantCulture, $"{path}[{index}]");

    [GeneratedRegex("^[$A-Za-z][A-Za-z0-9]*$")]
    private static partial Regex PlainName();
}
