using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace AutoSweep.Core.StrictJson;

/// <summary>Compares a JSON text, field by field, with the record that it is to become.</summary>
/// <remarks>
/// The strict serializer would refuse the same texts, but with messages for programmers; this one names the nearest known field and
/// the words that are allowed, from the same metadata.
/// </remarks>
internal sealed class JsonShape
{
    private JsonFieldFault? _fault;

    /// <summary>The first fault in the order of the text, or none.</summary>
    public JsonFieldFault? FirstFault(JsonElement element, JsonTypeInfo type)
    {
        Check(element, type, null, JsonFieldPath.Root);
        return _fault;
    }

    private void Check(JsonElement element, JsonTypeInfo type, JsonPropertyInfo? property, string path)
    {
        if (element.ValueKind == JsonValueKind.Null && property is { IsSetNullable: true })
            return;
        if (type.Kind == JsonTypeInfoKind.None)
            _fault ??= JsonLeaf.Fault(element, type.Type, property, path);
        else if (type.Kind == JsonTypeInfoKind.Enumerable)
            CheckItems(element, type, path);
        else if (element.ValueKind != JsonValueKind.Object)
            _fault ??= JsonLeaf.WrongKind(element, "an object in braces { }", path);
        else if (type.Kind == JsonTypeInfoKind.Dictionary)
            foreach (var entry in element.EnumerateObject())
                Check(entry.Value, Element(type), null, JsonFieldPath.Field(path, entry.Name));
        else
            CheckFields(element, type, path);
    }

    private void CheckItems(JsonElement element, JsonTypeInfo type, string path)
    {
        if (element.ValueKind != JsonValueKind.Array)
            _fault ??= JsonLeaf.WrongKind(element, "a list in brackets [ ]", path);
        else
            foreach (var (index, item) in element.EnumerateArray().Index())
                Check(item, Element(type), null, JsonFieldPath.Item(path, index));
    }

    private void CheckFields(JsonElement element, JsonTypeInfo type, string path)
    {
        var known = type.Properties.Where(CanBeGiven).ToDictionary(property => property.Name);
        foreach (var field in element.EnumerateObject())
            if (known.TryGetValue(field.Name, out var property))
                Check(field.Value, type.Options.GetTypeInfo(property.PropertyType), property, JsonFieldPath.Field(path, field.Name));
            else
                _fault ??= Unknown(field.Name, known.Keys, path);
        foreach (var property in known.Values.Where(MustBeGiven))
            if (!element.TryGetProperty(property.Name, out _))
                _fault ??= new(path, $"the field \"{property.Name}\" is missing", $"a field \"{property.Name}\"", "Add the field.");
    }

    private static JsonFieldFault Unknown(string name, IReadOnlyCollection<string> known, string path)
    {
        var nearest = NearestName.To(name, known);
        return new(JsonFieldPath.Field(path, name), $"an unknown field \"{name}\"", $"one of {string.Join(", ", known)}",
            nearest is null ? "Remove the field." : $"Write \"{nearest}\", if that was meant, or remove the field.");
    }

    // A getter that is computed, or left out of the file, has neither a setter nor a constructor parameter.
    private static bool CanBeGiven(JsonPropertyInfo property) => property.Set is not null || property.AssociatedParameter is not null;

    private static bool MustBeGiven(JsonPropertyInfo property) =>
        property.IsRequired || property.AssociatedParameter is { HasDefaultValue: false, IsMemberInitializer: false };

    private static JsonTypeInfo Element(JsonTypeInfo type) => type.Options.GetTypeInfo(type.ElementType!);
}
