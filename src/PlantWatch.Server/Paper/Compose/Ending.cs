using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>What every sheet ends with: corrections, people, lines to sign on.</summary>
internal static class Ending
{
    /// <summary>The sections.</summary>
    public static IEnumerable<Section> Sections(SheetDraft draft, params IReadOnlyList<string> signs) =>
    [
        new(draft.Words.Paper("corrections"), [new CorrectionTable(draft.Sources, draft.Words).Make()]),
        new(draft.Words.Paper("people"), [PeopleTable.Of(draft.Sources, draft.Words), new Remark(draft.Words.Paper("people_say"))]),
        new(draft.Words.Paper("signatures"), [new Signatures([.. signs, draft.Words.Paper("sign_seen")])]),
    ];
}
