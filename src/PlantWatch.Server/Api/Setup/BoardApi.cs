using PlantWatch.Server.Live;

namespace PlantWatch.Server.Api;

/// <summary>Boards: which there are, and how to draw one.</summary>
internal static class BoardApi
{
    public static void MapBoards(this RouteGroupBuilder api)
    {
        api.MapGet("/boards", (BoardTeller boards) => Answers.Ok(boards.Lines())).Produces<IReadOnlyList<BoardLine>>();
        api.MapGet("/boards/{id}", (string id, BoardTeller boards) => boards.Find(id) is { } board ? Answers.Ok(board) : Answers.NotFound($"board {id}"))
            .Produces<BoardView>().Produces<Problem>(StatusCodes.Status404NotFound);
    }
}
